/** Components rendered as the build renders them, and what a reader would find on them. No browser: for what only shows. */
import type { Component } from 'svelte';
import { render } from 'svelte/server';

/** What the compiler makes of a component, as far as a test has to know it. */
type Rendering = (internals: never, props: never) => unknown;

/** The HTML of a component, without the marks that the browser needs to bring it to life. */
export function htmlOf<C extends Rendering>(component: C, props: Parameters<C>[1]): string {
  // The renderer asks for a component of props that it does not know.
  const { body } = render(component as unknown as Component, { props: props as object });
  return body.replace(/<!--.*?-->/g, '');
}

/** The words of a piece of HTML, as they are read aloud: one space between them, without what is there for the eye alone. */
export function wordsOf(html: string): string {
  return html
    .replace(/<style[\s\S]*?<\/style>/g, '')
    .replace(/<span[^>]* aria-hidden="true"[^>]*>[\s\S]*?<\/span>/g, '')
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ')
    .trim();
}

/** The words of every element of a kind, in order: 'button', 'option', 'h3'. */
export function allOf(html: string, element: string): readonly string[] {
  return [...html.matchAll(new RegExp(`<${element}(?:\\s[^>]*)?>([\\s\\S]*?)</${element}>`, 'g'))].map(
    ([, inside = '']) => wordsOf(inside),
  );
}

/** A table as it is read: its caption, the words of its head, and those of its body, row by row. */
interface ReadTable {
  readonly caption: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Every table of a piece of HTML; tables do not stand in tables. */
export function tablesOf(html: string): readonly ReadTable[] {
  return [...html.matchAll(/<table[\s\S]*?<\/table>/g)].map(([table]) => {
    const part = (name: string): string => new RegExp(`<${name}[\\s\\S]*?</${name}>`).exec(table)?.[0] ?? '';
    return {
      caption: wordsOf(part('caption')),
      heads: allOf(part('thead'), 'th'),
      rows: [...part('tbody').matchAll(/<tr[\s\S]*?<\/tr>/g)].map(([row]) =>
        [...row.matchAll(/<(th|td)(?:\s[^>]*)?>([\s\S]*?)<\/\1>/g)].map(([, , cell = '']) => wordsOf(cell)),
      ),
    };
  });
}
