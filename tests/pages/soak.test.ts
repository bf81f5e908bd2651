import { expect, test } from '../support/test.ts';
import { pagesWithWidgets, soakPage } from '../support/soak-page.ts';

/** Enough to press most of what a page shows; the long run is `npm run soak`. */
const ACTIONS = 40;

/** Only a page that hangs takes so long, milliseconds: the slowest takes half a minute on two cores that others use as well. */
const MOST_TIME = 600_000;

for (const address of pagesWithWidgets())
  test(`${address} stands ${ACTIONS} actions of chance`, async ({ page }) => {
    test.setTimeout(MOST_TIME);
    expect(await soakPage(page, address, 7, ACTIONS)).toEqual([]);
  });
