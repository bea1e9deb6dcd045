import { Linter } from 'eslint';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { importDirection } from './import-direction.js';

const found = (file, code) =>
  new Linter()
    .verify(
      code,
      [
        {
          files: ['**/*.tsx'],
          languageOptions: { ecmaVersion: 2024, sourceType: 'module' },
          plugins: { own: { rules: { 'import-direction': importDirection } } },
          rules: { 'own/import-direction': 'error' },
        },
      ],
      { filename: path.join(import.meta.dirname, 'src', file) },
    )
    .map((m) => m.message);

describe('imports point one way', () => {
  it('keeps features apart', () => {
    expect(found('features/fuel/a.tsx', "import { x } from '../farms/x.tsx';")).toEqual([
      expect.stringContaining('may not import feature farms'),
    ]);
  });
  it('keeps components from seeing a feature or the app', () => {
    expect(found('components/a.tsx', "import { x } from '../features/farms/x.tsx';")).toHaveLength(1);
    expect(found('lib/units/a.tsx', "export { x } from '../../components/x.tsx';")).toHaveLength(1);
  });
  it('lets a feature use components and lib, and the app everything', () => {
    expect(found('features/fuel/a.tsx', "import { x } from '../../components/x.tsx'; import { y } from './y.tsx';")).toEqual([]);
    expect(found('app/router.tsx', "const x = () => import('../features/farms/x.tsx'); export { x };")).toEqual([]);
  });
});
