/** A part that wakes in a turn of its own is there from the build on, in the marks in which the browser finds it again. */
import { createRawSnippet } from 'svelte';
import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import AsBuilt from '../../../components/parts/AsBuilt.svelte';
import Waking from '../../../components/parts/Waking.svelte';

test('the build shows what wakes later, between the marks that waking looks for', () => {
  const children = createRawSnippet(() => ({ render: () => '<p>Join two contacts.</p>' }));
  const { body } = render(Waking, { props: { children } });
  expect(body).toMatch(/<div class="waking"><!--\[-->.*<p>Join two contacts\.<\/p>.*<!--\]--><\/div>/);
});

test('a picture that never changes is there from the build on, in one element that holds nothing else', () => {
  const children = createRawSnippet(() => ({ render: () => '<svg><path d="M0 0"></path></svg>' }));
  const { body } = render(AsBuilt, { props: { children } });
  expect(body).toMatch(
    /<span class="as-built">(?:<!---->)?<svg><path d="M0 0"><\/path><\/svg>(?:<!---->)?<\/span>/,
  );
});
