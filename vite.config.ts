import { fileURLToPath } from 'node:url';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { findChromium } from './src/cli/chromium.mjs';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('./src/app'),
  base: './',
  server: { fs: { allow: [here('.')] } },
  resolve: { dedupe: ['lit'] },
  build: { outDir: here('./dist'), emptyOutDir: true, target: 'es2022' },
  worker: { format: 'es' },
  test: {
    root: here('.'),
    env: { TZ: 'UTC' },
    projects: [
      {
        extends: true,
        test: {
          name: 'node',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          testTimeout: 60_000,
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({
              launchOptions: {
                executablePath: findChromium(),
                args: [
                  '--no-sandbox',
                  '--disable-gpu',
                  '--disable-quic',
                  '--no-first-run',
                  '--disable-background-networking',
                  '--disable-component-update',
                  '--disable-sync',
                ],
              },
            }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
    ],
  },
});
