import { expect, test } from '@playwright/test';
import { pagesWithWidgets, soakPage } from '../support/soak-page.ts';

/** Enough to press most of what a page shows; the long run is `npm run soak`. */
const ACTIONS = 40;

for (const address of pagesWithWidgets())
  test(`${address} stands ${ACTIONS} actions of chance`, async ({ page }) => {
    expect(await soakPage(page, address, 7, ACTIONS)).toEqual([]);
  });
