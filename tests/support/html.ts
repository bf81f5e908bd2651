function unescape(text: string): string {
  return text
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&lt;', '<')
    .replaceAll('&amp;', '&');
}

/** Every value of an attribute in built HTML, in order, with its entities read. */
export function attributeValues(html: string, name: string): readonly string[] {
  return [...html.matchAll(new RegExp(`\\s${name}="([^"]*)"`, 'g'))].map(([, value = '']) => unescape(value));
}

/** The content policy of a page, or undefined when it has none. Throws when there are several. */
export function policyOf(html: string): string | undefined {
  const metas = [...html.matchAll(/<meta http-equiv="content-security-policy" content="([^"]*)"/gi)];
  if (metas.length > 1) throw new Error(`page: needs one content policy, got ${metas.length}`);
  const content = metas[0]?.[1];
  return content === undefined ? undefined : unescape(content);
}
