import { type Browser, chromium } from 'playwright-core';

/** A browser that draws in software and asks nobody outside for anything. */
export function launchBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env['HANDRAIL_CHROMIUM'] ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--use-angle=swiftshader',
      '--enable-unsafe-swiftshader',
    ],
  });
}
