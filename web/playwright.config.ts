import { defineConfig } from '@playwright/test';

export default defineConfig({
  testDir: 'tests',
  globalSetup: './tests/build.ts',
  outputDir: 'target/test-results',
  // A job is long, and the machines that run this are small.
  timeout: 600_000,
  expect: { timeout: 60_000 },
  // One at a time: each starts a server and a browser beside the computing worker.
  workers: 1,
  forbidOnly: true,
  // A test that needs its second try is listed as flaky.
  retries: process.env['CI'] === undefined ? 0 : 1,
  reporter: [['list']],
  use: {
    launchOptions: {
      executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
      args: ['--no-sandbox', '--disable-background-networking', '--disable-quic'],
    },
    locale: 'en-US',
    timezoneId: 'UTC',
    viewport: { width: 1280, height: 800 },
    actionTimeout: 60_000,
  },
});
