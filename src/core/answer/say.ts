/** The answer in a player's words: no word of electronics before 'why' is asked. */
import { wiringWords } from '../wiring/index.ts';
import type { Goods, Style } from '../wiring/index.ts';
import type { Amiss, DrawerAnswer, PairAnswer, TalkAnswer, Through } from './talk.ts';
import type { Socket } from './told.ts';
import { capital } from '../verdict/index.ts';
import { sayList } from '../verdict/index.ts';

/** A socket as a player sees it. */
export function saySocket(socket: Socket): string {
  switch (socket) {
    case 'din5':
      return 'round, five holes (DIN)';
    case 'trs-6.35':
      return 'large jack, 6.35 mm (¼ inch)';
    case 'trs-3.5':
      return 'small jack, 3.5 mm';
    case 'trs-2.5':
      return 'tiny jack, 2.5 mm';
  }
}

/** A type as a manual may say it. */
export function sayType(style: Style): string {
  switch (style) {
    case 'din':
      return 'DIN';
    case 'type-a':
      return 'Type A: pin 5 on the tip';
    case 'type-b':
      return 'Type B: pin 4 on the tip';
    case 'two-contact':
      return 'two contacts: pin 4 on the tip, pin 5 on the sleeve';
    case 'two-contact-turned':
      return 'two contacts: pin 5 on the tip, pin 4 on the sleeve';
    case 'both-ways':
      return 'takes Type A and Type B alike';
    case 'ring-signal':
      return 'data on the ring, nothing on the tip';
    case 'tip-signal':
      return 'data on the tip, nothing on the ring';
  }
}

/** Things in series from the sender on: 'your DIN lead, then your Type B adapter'. */
export function sayThrough({ goods }: Through, whose: 'your' | 'a'): string {
  return goods
    .map(({ name, yours }) => (whose === 'your' ? `your ${yours ?? name}` : `a ${name}`))
    .join(', then ');
}

/** The answer in one line. */
export function sayAnswer({ kind, drawer, purchase, pairs }: TalkAnswer): string {
  switch (kind) {
    case 'yours':
      return `Yes, with ${sayThrough((drawer[0] as DrawerAnswer).through, 'your')}`;
    case 'buy':
      return 'Yes, with the right lead';
    case 'make':
      return pairs[0]?.grade === 'depends'
        ? 'Perhaps, with a lead made for them'
        : 'Yes, with a lead made for them';
    case 'unsure':
      return sayUnsure(pairs, purchase);
    case 'none':
      return 'No, not with a plain lead';
  }
}

/** A type is not known: sure all the same where every type has a lead and one thing serves them all. */
function sayUnsure(pairs: readonly PairAnswer[], purchase: readonly Goods[] | undefined): string {
  const all = pairs.every(({ ready }) => ready !== undefined);
  if (all && purchase?.length === 1) return 'Yes, whatever the type is';
  return purchase ? 'Most likely, once you know the type' : 'That depends on the type';
}

/** What to do about it, in a sentence or two. */
export function sayWhatToDo(answer: TalkAnswer): string {
  const [pair] = answer.pairs;
  switch (answer.kind) {
    case 'yours':
      return answer.drawer[0]?.worst === 'marginal'
        ? 'It should work, but some devices leave little to spare: keep the lead short.'
        : 'You need nothing else.';
    case 'buy':
      return `Ask for: ${sayThrough(pair?.ready as Through, 'a')}.`;
    case 'make':
      return pair?.grade === 'depends'
        ? 'No shop sells this lead ready made, and whether one works depends on the inside of the two devices. Ask the maker before you have one made.'
        : 'No shop sells this lead ready made. Solder it from the build sheet, or have it made from that sheet.';
    case 'unsure':
      return sayPurchase(answer.purchase);
    case 'none':
      return 'No plain lead or adapter can make these two talk. Put a powered converter between them, or use another jack on one of them.';
  }
}

/** What to buy while the type is not known. */
function sayPurchase(purchase: readonly Goods[] | undefined): string {
  if (purchase === undefined)
    return 'Nothing that shops sell covers every type this can be. Find out the type first: the manual, the maker, or three checks with a meter.';
  const list = sayList(purchase.map(({ name }) => `a ${name}`));
  return purchase.length === 1
    ? `One thing serves every type that ready-made leads can serve: ${list}. It harms neither device.`
    : `The least that serves every type that ready-made leads can serve: ${list}. Try them in turn; none of them harms either device.`;
}

/** How one thing of the drawer would do. */
export function sayDrawer({ through, worst, best }: DrawerAnswer): string {
  const what = sayThrough(through, 'your');
  const plain = through.goods.length === 1 ? what : `${what} in a row`;
  const upper = capital(plain);
  if (worst === 'harm') return `Do not connect ${plain}: it may damage a device.`;
  if (worst === 'works') return `${upper}: works.`;
  if (worst === 'marginal') return `${upper}: works, with little to spare.`;
  if (worst === 'depends') return `${upper}: depends on the inside of the devices.`;
  return best === 'nothing'
    ? `${upper}: does nothing.`
    : `${upper}: works only with some of the types it can be.`;
}

/** What the wrong goods would cost. A name that goes on after a colon is cut there. */
export function sayAmiss({ goods, grade }: Amiss): string {
  const what = `A ${goods.name.replace(/:.*/, '')} fits too`;
  if (grade === 'harm') return `${what}, but do not take it: it may damage a device.`;
  if (grade === 'depends')
    return `${what}, but do not take it: whether it works depends on the inside of the devices.`;
  return `${what}, but do not take it: nothing arrives through it. It harms neither device.`;
}

/** One thing of the drawer that fits neither alone nor with another of it. */
export function sayUnfit({ goods, needs }: TalkAnswer['unfit'][number]): string {
  const what = `Your ${goods.yours ?? goods.name}`;
  return needs
    ? `${what}: fits only together with a ${needs.name}, and then it works.`
    : `${what}: does not fit these two jacks.`;
}

/** One row for a pair of types: what it takes. */
export function sayPair({ ready, made, grade }: PairAnswer): string {
  if (ready) return sayThrough(ready, 'a');
  if (made) return `a lead made for it: ${wiringWords(made.conductors)}`;
  return grade === 'harm' ? 'no lead: it may damage a device' : 'no plain lead can';
}
