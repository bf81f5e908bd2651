/** A board that begins with two jacks and the lead between them, as another page has them in hand. */
import { addDevice, makePlan } from '../plan/index.ts';
import type { Device, Plan } from '../plan/index.ts';

/** Size of a device of which only a jack is known, centimetres (our choice): a small pedal. */
const BODY = { widthCentimetres: 10, depthCentimetres: 12 } as const;
/** Its jack stands in the middle of its back. */
const MIDDLE = BODY.widthCentimetres / 2;

/** The devices of a plan of one link put on a board, the sender as its controller; undefined where the plan has no link. */
export function boardOfLink({ devices, leads, links }: Plan): Plan | undefined {
  const [link] = links;
  if (!link) return undefined;
  const start = makePlan({});
  const placed = devices.reduce<Plan>((plan, device) => {
    const body: Device = {
      ...device,
      ...BODY,
      kind: device.name === link.output.device ? 'controller' : (device.kind ?? 'pedal'),
      jacks: device.jacks.map((jack) => ({ alongCentimetres: MIDDLE, ...jack })),
    };
    const edit = addDevice(plan, body);
    return edit.ok ? edit.plan : plan;
  }, start);
  return placed.devices.length === devices.length ? { ...placed, leads, links } : undefined;
}
