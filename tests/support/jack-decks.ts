/**
 * Jacks and meters as SPICE decks, written from the published figures and the workbook's table of default circuits, not from
 * the core: MMA CA-033 figs. 1 and 2 for loops, common practice for the rest. The core's own circuits are not asked.
 */
import type { JackUnderTest } from '../../src/core/readings/subjects.ts';

/** Conditions of a deck: off, or on in one of the two states of the line. */
export type DeckState = 'off' | 'idle' | 'active';

const MODELS = [
  '.model card d is=2.52n n=1.752 rs=0.568',
  '.model led6N138 d is=7.91e-20 n=1.44 rs=1',
  '.model ledH11L1 d is=1.11e-12 n=1.99 rs=2',
  '.model ledPC900V d is=6.61e-16 n=1.44 rs=1',
  '.model limit d is=1e-14 n=1 rs=0',
  '.model red d is=1e-18 n=1.93 rs=3',
];

/** Contacts of source, sink and shield by style: pins of a DIN, tip, ring and sleeve of a phone jack. */
const LINES: Readonly<Record<string, readonly [source: string, sink: string, shield: string]>> = {
  din: ['4', '5', '2'],
  'type-a': ['ring', 'tip', 'sleeve'],
  'type-b': ['tip', 'ring', 'sleeve'],
  'two-contact': ['tip', 'sleeve', ''],
  'two-contact-turned': ['sleeve', 'tip', ''],
  'both-ways': ['ring', 'tip', 'sleeve'],
  'ring-signal': ['', 'ring', 'sleeve'],
  'tip-signal': ['', 'tip', 'sleeve'],
};

/** Lines of a jack alone; `at` gives the node of a contact or of an inner point. */
function jackLines(under: JackUnderTest, state: DeckState, at: (point: string) => string): readonly string[] {
  const supply = (volts: number): string =>
    state === 'off' ? `Rsup ${at('rail')} ${at('gnd')} 1k` : `Vsup ${at('rail')} ${at('gnd')} ${volts}`;
  const tie = (shield: string): string => `Rtie ${at(shield)} ${at('gnd')} 1m`;
  if (under.kind === 'other') {
    const rest = {
      footswitch: [supply(3.3), `R1 ${at('tip')} ${at('rail')} 10k`],
      'footswitch-double': [
        supply(3.3),
        `R1 ${at('tip')} ${at('rail')} 10k`,
        `R2 ${at('ring')} ${at('rail')} 10k`,
      ],
      'expression-ring': [
        supply(3.3),
        `R1 ${at('ring')} ${at('rail')} 1k`,
        `R2 ${at('tip')} ${at('gnd')} 100k`,
      ],
      'expression-tip': [
        supply(3.3),
        `R1 ${at('tip')} ${at('rail')} 1k`,
        `R2 ${at('ring')} ${at('gnd')} 100k`,
      ],
      headphone: [`R1 ${at('tip')} ${at('gnd')} 33`, `R2 ${at('ring')} ${at('gnd')} 33`],
      line: [`R1 ${at('tip')} ${at('gnd')} 1meg`],
      'control-voltage': [supply(2.5), `R1 ${at('tip')} ${at('rail')} 1k`],
    }[under.other];
    return [tie('sleeve'), ...rest];
  }
  const { direction, style, circuit, part } = under.jack;
  const [source, sink, shield] = LINES[style] ?? ['', '', ''];
  const lines = shield === '' ? [] : direction === 'out' ? [tie(shield)] : [];
  if (direction === 'out') {
    const [volts, sourceOhms, sinkOhms] = circuit.startsWith('driver-3v3') ? [3.3, 33, 10] : [5, 220, 220];
    lines.push(supply(volts));
    if (circuit !== 'driver-ground') lines.push(`Rsrc ${at('rail')} ${at(source)} ${sourceOhms}`);
    lines.push(`Rsnk ${at(sink)} ${at('stage')} ${sinkOhms}`);
    if (state === 'off')
      // The gigaohm keeps the engine's iteration steady where both diodes block; it takes nothing that counts.
      lines.push(
        `Dup ${at('stage')} ${at('rail')} card`,
        `Ddown ${at('gnd')} ${at('stage')} card`,
        `Rleak ${at('stage')} ${at('gnd')} 1e9`,
      );
    else if (state === 'active') lines.push(`Rlow ${at('stage')} ${at('gnd')} 1m`);
    else if (circuit === 'driver-3v3') lines.push(`Rleak ${at('stage')} ${at('gnd')} 1e12`);
    else lines.push(`Rhigh ${at('rail')} ${at('stage')} 1m`);
    return lines;
  }
  if (circuit === 'receiver-isolated') {
    return [
      ...lines,
      `Rser ${at(source)} ${at('entry')} 220`,
      `Dled ${at('entry')} ${at(sink)} led${part}`,
      `Dpro ${at(sink)} ${at('entry')} card`,
    ];
  }
  if (circuit === 'receiver-both-ways') {
    return [
      ...lines,
      `Rser ${at(source)} ${at('entry')} 220`,
      `D1 ${at('entry')} ${at('plus')} card`,
      `D2 ${at(sink)} ${at('plus')} card`,
      `D3 ${at('minus')} ${at('entry')} card`,
      `D4 ${at('minus')} ${at(sink)} card`,
      `Dled ${at('plus')} ${at('minus')} led${part}`,
    ];
  }
  if (circuit === 'receiver-led') {
    return [
      tie(shield),
      supply(5),
      `Rser ${at('rail')} ${at('anode')} 470`,
      `Dled ${at('anode')} ${at(sink)} led${part}`,
    ];
  }
  return [
    tie(shield),
    supply(3.3),
    `Rin ${at(sink)} ${at('gate')} 1k`,
    `Rpull ${at('rail')} ${at('gate')} 10k`,
    `Dup ${at('gate')} ${at('rail')} card`,
    `Ddown ${at('gnd')} ${at('gate')} card`,
  ];
}

/** Whether anything stands behind a contact of a jack: nothing can flow from or to one that has nothing. */
export function isWired(under: JackUnderTest, contact: string): boolean {
  const nodes = jackLines(under, 'idle', (point) => `<${point}>`).flatMap((line) =>
    line.split(' ').slice(1, 3),
  );
  return nodes.includes(`<${contact}>`);
}

/** 1 m of 26 AWG (0.1339 ohm: ASTM B258 and the resistivity of copper) and one contact of 30 mohm. */
const LEAD_OHMS = 0.1339 + 0.03;

/** Constants of three meters inside what six manuals say: megohms on volts, milliamperes and most volts of the diode test, most ohms. */
export const METERS = {
  usual: { voltsMegohms: 10, diodeMilliamperes: 1, diodeVolts: 3, mostOhms: 20e6 },
  'low-diode': { voltsMegohms: 10, diodeMilliamperes: 1, diodeVolts: 1.5, mostOhms: 20e6 },
  pocket: { voltsMegohms: 1, diodeMilliamperes: 0.5, diodeVolts: 2.5, mostOhms: 2e6 },
} as const;

/** The name of a meter whose constants stand here. */
export type MeterName = keyof typeof METERS;

/** Lines of a meter between nodes `red` and 0. */
function meterLines(meter: DeckReading['meter'], red: string, name: MeterName): readonly string[] {
  const { voltsMegohms, diodeMilliamperes, diodeVolts } = METERS[name];
  switch (meter) {
    case 'volts':
      return [`Rm ${red} 0 ${voltsMegohms}meg`];
    case 'loaded':
      return [`Rm ${red} 0 ${voltsMegohms}meg`, `Rload ${red} 0 1k`];
    case 'ohms':
    case 'continuity':
      return [`Vm ${red}cell 0 0.5`, `Rm ${red}cell ${red} 1k`];
    case 'diode':
      return [
        `Im 0 ${red} ${diodeMilliamperes}m`,
        `Rm ${red} 0 10meg`,
        // At most so many volts: what more the current asks for goes through this diode, and the reading is overload.
        `Dlimit ${red} ${red}limit limit`,
        `Vlimit ${red}limit 0 ${diodeVolts}`,
      ];
    case 'led':
      return [`Rm ${red} ${red}mid 220`, `Dm ${red}mid 0 red`];
  }
}

/** One reading: red and black contact, and what is attached. */
export interface DeckReading {
  readonly meter: 'volts' | 'ohms' | 'continuity' | 'diode' | 'led' | 'loaded';
  readonly red: string;
  readonly black: string;
  /** Which meter it is; the usual one when left out. */
  readonly name?: MeterName;
}

/** A deck that takes several readings at once, each on a copy of the jack; reading `i` is volts at node `red<i>`, or amperes of `rm<i>`. */
export function jackDeck(
  title: string,
  under: JackUnderTest,
  state: DeckState,
  readings: readonly DeckReading[],
): string {
  const lines = readings.flatMap(({ meter, red, black, name: one = 'usual' }, number) => {
    const at = (point: string): string => `n${number}${point}`;
    const copies = [
      ...jackLines(under, state, at),
      `Rred ${at(red)} red${number} ${LEAD_OHMS}`,
      `Rblack ${at(black)} 0 ${LEAD_OHMS}`,
      ...meterLines(meter, `red${number}`, one),
    ];
    return copies.map((line) => line.replace(/^(\S+)/, (name) => `${name}x${number}`));
  });
  return [title, ...lines, ...MODELS, '.op', '.end'].join('\n');
}
