/** What was entered into the jack finder, and how it is kept in the browser. */
import { CONNECTORS } from '../../src/core/wiring/index.ts';
import { MARKINGS, MENU_FACTS, METER_PROFILES, safeReadings } from '../../src/core/readings/index.ts';
import type { Evidence, Reading as MeterReading, TakenReading } from '../../src/core/readings/index.ts';
import { noteKind } from '../keep/kind.ts';
import { fieldOf, oneOf } from '../keep/notes.ts';

/** What is known beforehand, and the readings taken, in order. */
export interface FinderState {
  readonly evidence: Evidence;
  readonly taken: readonly TakenReading[];
}

/** What the page starts with. */
export const FRESH: FinderState = {
  evidence: {
    connector: 'trs-3.5',
    marked: 'nothing',
    menu: [],
    meter: 'usual',
    canSwitchOn: true,
    canStreamClock: false,
  },
  taken: [],
};

/** What was entered as the keeper of its shelf knows it. */
export const FINDER_KIND = noteKind<FinderState>(
  'list of readings',
  readState,
  (state) => state,
  ({ taken }, note) => taken.length === listOf(note).length,
);

/** What can be read of a note; what is no reading that may be taken is left out. */
function readState(note: unknown): FinderState {
  const known = fieldOf(note, 'evidence');
  const menu = fieldOf(known, 'menu');
  const canSwitchOn = fieldOf(known, 'canSwitchOn') !== false;
  const evidence: Evidence = {
    connector: oneOf(CONNECTORS, fieldOf(known, 'connector'), FRESH.evidence.connector),
    marked: oneOf(MARKINGS, fieldOf(known, 'marked'), FRESH.evidence.marked),
    menu: MENU_FACTS.filter((fact) => Array.isArray(menu) && menu.includes(fact)),
    meter: oneOf([...METER_PROFILES, 'not-known'] as const, fieldOf(known, 'meter'), FRESH.evidence.meter),
    canSwitchOn,
    canStreamClock: canSwitchOn && fieldOf(known, 'canStreamClock') === true,
  };
  // A reading that was once permitted stays, though the device cannot be switched on any more: volts go either way round.
  const permitted = safeReadings({ ...evidence, canSwitchOn: true, canStreamClock: true });
  const taken = listOf(note).flatMap((one): TakenReading[] => {
    const place = fieldOf(one, 'at');
    const is = (name: string, value: string): boolean => fieldOf(place, name) === value;
    const at = permitted
      .flatMap((way) => [way, { ...way, red: way.black, black: way.red }])
      .find(
        ({ meter, power, red, black }) =>
          is('meter', meter) && is('power', power) && is('red', red) && is('black', black),
      );
    const reading = at && readingOf(at.meter, fieldOf(one, 'reading'));
    return at && reading ? [{ at, reading }] : [];
  });
  return { evidence, taken };
}

function listOf(note: unknown): readonly unknown[] {
  const list = fieldOf(note, 'taken');
  return Array.isArray(list) ? list : [];
}

function readingOf(meter: string, note: unknown): MeterReading | undefined {
  if (fieldOf(note, 'meter') !== meter) return undefined;
  const value = fieldOf(note, 'value');
  const shows = fieldOf(note, 'shows');
  if (shows === 'overload' && (meter === 'ohms' || meter === 'diode')) return { meter, shows };
  return shows === 'value' &&
    typeof value === 'number' &&
    (meter === 'volts' || meter === 'loaded' || meter === 'ohms' || meter === 'diode')
    ? { meter, shows, value }
    : undefined;
}
