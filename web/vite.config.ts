import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [react()],
  server: { proxy: { '/graphql': 'http://localhost:5080', '/uploads': 'http://localhost:5080' } },
  build: { target: 'es2022', chunkSizeWarningLimit: 900 },
  test: { environment: 'jsdom', css: true, setupFiles: ['src/test-setup.ts'], testTimeout: 60_000 },
});
