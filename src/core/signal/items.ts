/** Lists of messages as people write them, and the bytes of a list. */
import { encode } from './encode.ts';
import { bankSelect, type Message } from './messages.ts';

/** What can stand in a list: a message, a bank select (0 to 16383), or bytes by hand. */
export type Item =
  | Message
  | { readonly kind: 'bank select'; readonly channel: number; readonly bank: number }
  | { readonly kind: 'bytes'; readonly bytes: readonly number[] };

/** The bytes of a list; running status does not reach across bytes by hand. */
export function bytesOf(items: readonly Item[], runningStatus: boolean): readonly number[] {
  const bytes: number[] = [];
  let run: Message[] = [];
  const flush = (): void => {
    bytes.push(...encode(run, { runningStatus }));
    run = [];
  };
  for (const item of items) {
    if (item.kind === 'bytes') {
      flush();
      bytes.push(...item.bytes);
    } else if (item.kind === 'bank select') run.push(...bankSelect(item.channel, item.bank));
    else run.push(item);
  }
  flush();
  return bytes;
}
