import {
  above,
  between,
  say,
  searchFor,
  solve,
  type AuthoredLink,
  type Claims,
} from '../../../src/core/learn/index.ts';
import { ADAPTER_METRES } from '../../../src/core/wiring/index.ts';
import { links } from './data.ts';

const active = (link: AuthoredLink): number => solve(link).inputs[0]?.active ?? NaN;

export const claims: Claims = {
  'an input that takes both directions gets the same from a straight and a crossed lead, and less than a plain one':
    () => [
      [say({ ...links.eitherWay, leads: links.crossed.leads }, 'active'), say(links.eitherWay, 'active')],
      [active(links.crossed), above(active(links.eitherWay))],
    ],
  'an adapter of a length that the standard allows hardly changes the current': () => [
    [links.adapter.leads[1]?.metres, between(0, ADAPTER_METRES)],
    [active(links.adapter) / active(links.crossed), above(0.99)],
  ],
  'the adapter on the bench lacks one wire of the whole one': () => {
    const half: readonly string[] = links.halfAdapter.leads[1]?.wires ?? [];
    return [[links.adapter.leads[1]?.wires.filter((pair) => !half.includes(pair)), ['tip-ring']]];
  },
  'a sleeve on pin 2 carries the same current in both states': () => [
    [say(links.sleeveToShield, 'idle'), say(links.sleeveToShield, 'active')],
  ],
  'a voltage without its ground works on some tables only': () => {
    const input = solve(links.voltage).inputs[0];
    return [
      [solve(links.voltageNoGround).byGrounding, { separate: 'no-path', joined: 'flows' }],
      [input?.active, between(-Infinity, input?.on ?? NaN)],
      [input?.idle, above(input?.off ?? NaN)],
    ];
  },
  'of every way to join a ground-referenced output to a loop none works, and two are upside down': () => {
    const { answer, maps, counts } = searchFor(links.noSource);
    return [
      [answer, 'no-passive-lead'],
      // Maps of three contacts to three, each used at most once: 1 + 9 + 18 + 6.
      [maps, 34],
      [counts.flows + counts.weak, 0],
      [counts.inverted, 2],
      [say(links.upsideDown, 'active'), '0 mA'],
    ];
  },
};
