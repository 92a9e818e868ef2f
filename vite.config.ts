import { fileURLToPath } from 'node:url';
import { playwright } from '@vitest/browser-playwright';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';
import { aheadPlugin } from './src/cli/aheadPlugin.ts';
import { findChromium, TEST_CHROMIUM_ARGS } from './src/cli/chromium.mjs';
import { HEADERS } from './src/cli/policy.ts';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('./src/app'),
  base: './',
  server: { fs: { allow: [here('.')] } },
  preview: { headers: HEADERS },
  resolve: {
    dedupe: ['lit'],
    // The Markdown parser brings along what finds bare addresses in prose, which is turned off.
    // And a table of named letters that browsers hold themselves.
    alias: {
      'linkify-it': here('./src/notebook/noLinkify.ts'),
      entities: here('./src/notebook/namedLetters.ts'),
    },
  },
  build: {
    outDir: here('./dist'),
    emptyOutDir: true,
    target: 'es2022',
    rolldownOptions: {
      output: {
        // The manifest names the icon, so its name stays.
        assetFileNames: ({ names }) =>
          names[0] === 'icon.svg' ? 'icon.svg' : 'assets/[name]-[hash][extname]',
      },
    },
  },
  plugins: [
    aheadPlugin(here('.')),
    VitePWA({
      mode: 'production',
      registerType: 'autoUpdate',
      // A script file of its own: the content security policy allows no other, and it never reloads a page at work.
      injectRegister: 'script-defer',
      workbox: {
        skipWaiting: true,
        clientsClaim: true,
        globPatterns: ['**/*.{js,css,html,svg}'],
        maximumFileSizeToCacheInBytes: 8_000_000,
      },
      manifest: {
        name: 'winterkeep',
        short_name: 'winterkeep',
        description: 'How to winter a small beef herd: what stays, what it takes, how sure.',
        display: 'standalone',
        start_url: './',
        background_color: '#fdfcf9',
        theme_color: '#fdfcf9',
        icons: [{ src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
      },
    }),
  ],
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
          setupFiles: ['tests/published/refuseUnlabelled.ts'],
          globalSetup: ['tests/cli/sharedBuild.ts'],
          // Model and tables are imported once for all files: nothing in them changes by being used.
          isolate: false,
          // What is made for a moment is cleared away while it is young: a sixth less work.
          execArgv: ['--max-semi-space-size=64'],
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
                args: TEST_CHROMIUM_ARGS,
              },
            }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
    ],
  },
});
