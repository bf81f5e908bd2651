/**
 * The structure of a package's manifest, held against the public schemas `imscp_rootv1p1p2.xsd` (IMS Content Packaging 1.1.2) and
 * `adlcp_rootv1p2.xsd` (ADL, SCORM 1.2): which element stands in which, in what order and how often, and which attributes it needs
 * and may have. Written down from reading both; the schema files are no part of the project.
 */

/** What an element may hold: children in their order with the least and the most of each; attributes, those that it needs first. */
interface Rule {
  readonly children: readonly (readonly [name: string, least: number, most: number])[];
  readonly needs: readonly string[];
  readonly may: readonly string[];
  /** Elements of other name spaces may follow the children. */
  readonly open: boolean;
  /** Longest text of its own, characters; none where it holds elements. */
  readonly text?: number;
}

const rule = (
  children: Rule['children'],
  needs: readonly string[] = [],
  may: readonly string[] = [],
  open = true,
): Rule => ({ children, needs, may, open });
const text = (most: number): Rule => ({ ...rule([], [], [], false), text: most });
const META = ['metadata', 0, 1] as const;

const RULES: Readonly<Record<string, Rule>> = {
  manifest: rule(
    [META, ['organizations', 1, 1], ['resources', 1, 1], ['manifest', 0, Infinity]],
    ['identifier'],
    ['version', 'xml:base'],
  ),
  metadata: rule([
    ['schema', 0, 1],
    ['schemaversion', 0, 1],
  ]),
  organizations: rule([['organization', 0, Infinity]], [], ['default']),
  organization: rule([['title', 0, 1], ['item', 0, Infinity], META], ['identifier'], ['structure']),
  item: rule(
    [['title', 0, 1], ['item', 0, Infinity], META],
    ['identifier'],
    ['identifierref', 'isvisible', 'parameters'],
  ),
  resources: rule([['resource', 0, Infinity]], [], ['xml:base']),
  resource: rule(
    [META, ['file', 0, Infinity], ['dependency', 0, Infinity]],
    ['identifier', 'type'],
    ['xml:base', 'href', 'adlcp:scormtype'],
  ),
  file: rule([META], ['href']),
  dependency: rule([], ['identifierref']),
  schema: text(100),
  schemaversion: text(20),
  title: text(200),
  'adlcp:masteryscore': text(200),
};

/** Name spaces of the two schemas, as the manifest has to declare them. */
const SPACES = {
  xmlns: 'http://www.imsproject.org/xsd/imscp_rootv1p1p2',
  'xmlns:adlcp': 'http://www.adlnet.org/xsd/adlcp_rootv1p2',
};

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Element[];
  text: string;
}

/** The elements of a plain XML text without comments and sections. @throws when a tag is left open or closed twice. */
function elementsOf(xml: string): Element {
  const top: Element = { name: '', attributes: {}, children: [], text: '' };
  const open = [top];
  const body = xml.replace(/^<\?xml[^?]*\?>/, '');
  for (const [, close, name = '', given = '', empty, words = ''] of body.matchAll(
    /<(\/?)([\w:]+)((?:\s+[\w:]+="[^"<]*")*)\s*(\/?)>|([^<]+)/g,
  )) {
    const here = open.at(-1) ?? top;
    if (name === '') here.text += words;
    else if (close) {
      if (open.length < 2 || here.name !== name) throw new Error(`xml: '</${name}>' closes '${here.name}'`);
      open.pop();
    } else {
      const attributes = Object.fromEntries(
        [...given.matchAll(/([\w:]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, value]),
      );
      const made: Element = { name, attributes, children: [], text: '' };
      here.children.push(made);
      if (!empty) open.push(made);
    }
  }
  if (open.length > 1) throw new Error(`xml: '${open.at(-1)?.name}' is left open`);
  return top;
}

function complaintsOf({ name, attributes, children, text: own }: Element): readonly string[] {
  const rules = RULES[name];
  if (!rules) return [`'${name}' is no element of either schema`];
  const said: string[] = [];
  const names = Object.keys(attributes).filter((one) => !one.startsWith('xmlns'));
  for (const one of rules.needs) if (!names.includes(one)) said.push(`'${name}' needs '${one}'`);
  for (const one of names)
    if (![...rules.needs, ...rules.may].includes(one)) said.push(`'${name}' has no attribute '${one}'`);
  if (own.trim() !== '' && rules.text === undefined) said.push(`'${name}' holds no text`);
  // A sign that is written as a number is one character.
  if (own.replace(/&#\d+;/g, '_').length > (rules.text ?? Infinity))
    said.push(`'${name}' has at most ${rules.text} characters`);
  let at = 0;
  for (const [child, least, most] of rules.children) {
    const start = at;
    while (children[at]?.name === child) at += 1;
    if (at - start < least || at - start > most)
      said.push(`'${name}' holds '${child}' ${least} to ${most} times, got ${at - start}`);
  }
  for (const { name: left } of children.slice(at))
    if (!rules.open || !left.includes(':')) said.push(`'${left}' does not stand there in '${name}'`);
  return [...said, ...children.flatMap(complaintsOf)];
}

/** Everything in a manifest that the schemas do not allow; empty where it is valid. */
export function schemaComplaints(xml: string): readonly string[] {
  const [manifest, ...more] = elementsOf(xml).children;
  if (manifest?.name !== 'manifest' || more.length > 0) return ['the file holds one manifest'];
  const spaces = Object.entries(SPACES).flatMap(([name, address]) =>
    manifest.attributes[name] === address ? [] : [`'${name}' must be ${address}`],
  );
  const values = [...xml.matchAll(/adlcp:scormtype="([^"]*)"/g)].flatMap(([, value]) =>
    value === 'sco' || value === 'asset' ? [] : [`'adlcp:scormtype' is sco or asset, got '${value}'`],
  );
  const ids = [...xml.matchAll(/\sidentifier="([^"]*)"/g)].map(([, id = '']) => id);
  const spelt = ids.flatMap((id, at) =>
    /^[A-Za-z_][\w.-]*$/.test(id) && ids.indexOf(id) === at ? [] : [`identifier '${id}' is no ID of its own`],
  );
  return [...spaces, ...values, ...spelt, ...complaintsOf(manifest)];
}
