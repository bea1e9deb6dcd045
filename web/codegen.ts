import type { CodegenConfig } from '@graphql-codegen/cli';

const config: CodegenConfig = {
  schema: '../docs/schema.graphql',
  documents: ['src/**/*.{ts,tsx}', '!src/lib/graphql/generated/**'],
  generates: {
    './src/lib/graphql/generated/': {
      preset: 'client',
      presetConfig: { fragmentMasking: false },
      config: { documentMode: 'string', enumsAsTypes: true, useTypeImports: true, scalars: { ID: 'string', DateOnly: 'string' } },
    },
  },
};

export default config;
