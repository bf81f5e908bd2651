/**
 * Connectors, their contacts and what happens when a plug meets a jack.
 * Sizes and the behaviour of TS plugs in TRS jacks: secondary pages, status c (facts: connector geometry).
 */

/** Every connector of the workbook: DIN by pin count, phone plugs by contacts and diameter in millimetres. */
export const CONNECTORS = ['din5', 'din7', 'trs-6.35', 'trs-3.5', 'trs-2.5', 'ts-6.35', 'ts-3.5'] as const;
/** A connector. */
export type Connector = (typeof CONNECTORS)[number];

/** A lead carries plugs; a device, or the far end of an adapter, carries jacks. */
export const FORMS = ['plug', 'jack'] as const;
/** Plug or jack. */
export type Form = (typeof FORMS)[number];

/** Every contact of every connector. The shell is a contact of DIN connectors only. */
export const CONTACTS = ['1', '2', '3', '4', '5', '6', '7', 'shell', 'tip', 'ring', 'sleeve'] as const;
/** A contact of a connector. */
export type Contact = (typeof CONTACTS)[number];

const CONTACTS_OF: Readonly<Record<Connector, readonly Contact[]>> = {
  din5: ['1', '2', '3', '4', '5', 'shell'],
  din7: ['1', '2', '3', '4', '5', '6', '7', 'shell'],
  'trs-6.35': ['tip', 'ring', 'sleeve'],
  'trs-3.5': ['tip', 'ring', 'sleeve'],
  'trs-2.5': ['tip', 'ring', 'sleeve'],
  'ts-6.35': ['tip', 'sleeve'],
  'ts-3.5': ['tip', 'sleeve'],
};

/** The contacts of a connector in reading order, the shell last. */
export function contactsOf(connector: Connector): readonly Contact[] {
  return CONTACTS_OF[connector];
}

/** The family of a connector. */
export function familyOf(connector: Connector): 'din' | 'trs' | 'ts' {
  if (connector === 'din5' || connector === 'din7') return 'din';
  return connector.startsWith('trs') ? 'trs' : 'ts';
}

/** The diameter of a phone plug in millimetres, or undefined for a DIN connector. */
export function diameterOf(connector: Connector): number | undefined {
  return familyOf(connector) === 'din' ? undefined : Number(connector.split('-')[1]);
}

/** One place where metal of the plug touches metal of the jack. */
interface Touch {
  readonly plug: Contact;
  readonly jack: Contact;
}

/** What happens when a plug is put into a jack: which contacts touch, or why it does not go in. */
type Mating =
  | { readonly fits: true; readonly touches: readonly Touch[] }
  | { readonly fits: false; readonly reason: string };

/**
 * Put a plug into a jack.
 * A TS plug in a TRS jack: its long sleeve touches the jack's ring spring too, so ring and sleeve are joined (status c).
 * A TRS plug in a TS jack: the ring usually touches nothing (status c).
 * A 5-pin plug enters a 7-pin socket, whose pins 1 to 5 stand where its own do (worked out from the pin angles); not the reverse.
 */
export function mate(plug: Connector, jack: Connector): Mating {
  const ofPlug = (MATINGS[plug] ??= {});
  return (ofPlug[jack] ??= tryMating(plug, jack));
}

const MATINGS: Partial<Record<Connector, Partial<Record<Connector, Mating>>>> = {};

function tryMating(plug: Connector, jack: Connector): Mating {
  const plugFamily = familyOf(plug);
  const jackFamily = familyOf(jack);
  if (plugFamily === 'din' || jackFamily === 'din') {
    if (plugFamily !== jackFamily)
      return { fits: false, reason: `a ${words(plug)} plug does not go into a ${words(jack)} jack` };
    if (plug === 'din7' && jack === 'din5') {
      return {
        fits: false,
        reason: 'a 7-pin DIN plug does not go into a 5-pin DIN jack: there are no holes for pins 6 and 7',
      };
    }
    return { fits: true, touches: contactsOf(plug).map((contact) => ({ plug: contact, jack: contact })) };
  }
  if (diameterOf(plug) !== diameterOf(jack)) {
    return {
      fits: false,
      reason: `a ${words(plug)} plug does not fit a ${words(jack)} jack: the sizes differ`,
    };
  }
  const touches: Touch[] = [
    { plug: 'tip', jack: 'tip' },
    { plug: 'sleeve', jack: 'sleeve' },
  ];
  if (plugFamily === 'trs' && jackFamily === 'trs') touches.push({ plug: 'ring', jack: 'ring' });
  if (plugFamily === 'ts' && jackFamily === 'trs') touches.push({ plug: 'sleeve', jack: 'ring' });
  return { fits: true, touches };
}

/** A connector in the words of the trade, without 'plug' or 'jack'. */
export function words(connector: Connector): string {
  switch (connector) {
    case 'din5':
      return '5-pin DIN';
    case 'din7':
      return '7-pin DIN';
    case 'trs-6.35':
    case 'trs-3.5':
    case 'trs-2.5':
    case 'ts-6.35':
    case 'ts-3.5':
      return `${diameterOf(connector)} mm ${familyOf(connector).toUpperCase()}`;
  }
}

/** A contact in words: 'pin 4', 'ring', 'shell'. */
export function contactWords(contact: Contact): string {
  return /^\d$/.test(contact) ? `pin ${contact}` : contact;
}

/** A conductor in words, as what it joins: 'pin 4 to ring'. */
export function conductorWords({ from, to }: Readonly<Record<'from' | 'to', Contact>>): string {
  return `${contactWords(from)} to ${contactWords(to)}`;
}

/** Conductors the way a manual draws them: 'pin 4 to ring, pin 5 to tip, pin 2 to sleeve'. */
export function wiringWords(conductors: readonly Parameters<typeof conductorWords>[0][]): string {
  return conductors.map(conductorWords).join(', ');
}
