import js from '@eslint/js';
import hooks from 'eslint-plugin-react-hooks';
import ts from 'typescript-eslint';
import { importDirection } from './import-direction.js';

export default ts.config({ ignores: ['dist', 'src/lib/graphql/generated'] }, js.configs.recommended, ...ts.configs.recommended, {
  plugins: { 'react-hooks': hooks, own: { rules: { 'import-direction': importDirection } } },
  rules: { ...hooks.configs.recommended.rules, 'own/import-direction': 'error' },
});
