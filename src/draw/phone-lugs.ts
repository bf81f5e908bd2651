/**
 * Behind a phone plug with its handle off: the solder lugs. Their order and lengths are for drawing only.
 */
import type { Connector, Contact } from '../core/wiring/index.ts';
import { contactsOf, diameterOf } from '../core/wiring/index.ts';
import type { FaceContact, Outline } from './face.ts';
import type { Exit, Point } from './geometry.ts';
import { boundsOf, boxPath, linePath } from './geometry.ts';
import type { Parts, Place } from './phone-shape.ts';
import { HEADINGS, phoneScale, rect } from './phone-shape.ts';
import { TEXT_SIZES, centredText } from './text.ts';

/** Pixels of lugs: [length along, width across, distance between]. Stacked lugs are wider, for their names stand upright. */
const LUGS = { row: { width: 24, pitch: 32 }, stack: { width: 50, pitch: 60 } } as const;

/** Behind the plug with its handle off: the stub of the shank, the collar, the lugs. Ring on top, tip in the middle, sleeve longest. */
export function lugParts(connector: Connector, exit: Exit, origin: Point): Parts {
  const lugs = exit === 'left' || exit === 'right' ? LUGS.row : LUGS.stack;
  const place = lugPlace(exit, origin);
  const names = (['ring', 'tip', 'sleeve'] as const).filter((contact) =>
    contactsOf(connector).includes(contact),
  );
  const half = (names.length * lugs.pitch) / 2 + 2;
  const radius = ((diameterOf(connector) ?? 0) / 2) * phoneScale(connector);
  const collar = { from: -52, to: -38 };
  const wave = [0, 1, 2, 3, 4].map((step) =>
    place(-108 + (step % 2 === 0 ? 0 : 6), -radius + (step * radius) / 2),
  );
  const outlines: Outline[] = [
    { d: linePath([place(collar.from, -radius), wave[0] ?? origin]), kind: 'outline' },
    { d: linePath([place(collar.from, radius), wave[4] ?? origin]), kind: 'outline' },
    { d: linePath(wave), kind: 'hairline' },
    { d: rect(place, collar.from, collar.to, half), kind: 'hatch' },
    { d: rect(place, collar.from, collar.to, half), kind: 'outline' },
  ];
  const lengths: Readonly<Partial<Record<Contact, number>>> =
    lugs === LUGS.row ? { ring: 54, tip: 62, sleeve: 92 } : { ring: 34, tip: 42, sleeve: 58 };
  const contacts = names.map((contact, index): FaceContact => {
    const across = (index - (names.length - 1) / 2) * lugs.pitch;
    const end = collar.to + (lengths[contact] ?? 0);
    const shape = [
      place(collar.to, across - lugs.width / 2),
      place(end, across - lugs.width / 2),
      place(end, across + lugs.width / 2),
      place(collar.to, across + lugs.width / 2),
    ];
    const box = boundsOf(shape);
    const port = place(end, across);
    return {
      contact,
      x: box.x + box.width / 2,
      y: box.y + box.height / 2,
      d: boxPath(box, 5),
      touch: boxPath({ x: box.x - 3, y: box.y - 3.5, width: box.width + 6, height: box.height + 7 }),
      box,
      label: centredText(
        contact,
        { x: box.x + box.width / 2, y: box.y + box.height / 2 },
        TEXT_SIZES.contact,
      ),
      port: { ...port, direction: HEADINGS[exit] },
    };
  });
  return {
    bounds: boundsOf([place(-108, -half), place(56, half), place(-108, half), place(56, -half)]),
    outlines,
    contacts,
  };
}

function lugPlace(exit: Exit, origin: Point): Place {
  switch (exit) {
    case 'right':
      return (along, across) => ({ x: origin.x + along + 26, y: origin.y + across });
    case 'left':
      return (along, across) => ({ x: origin.x - along - 26, y: origin.y + across });
    case 'down':
      return (along, across) => ({ x: origin.x + across, y: origin.y + along + 26 });
    case 'up':
      return (along, across) => ({ x: origin.x + across, y: origin.y - along - 26 });
  }
}
