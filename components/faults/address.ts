/** A hidden fault in an address: '#board=chain&number=5', the same for everybody in a class. */
import { BENCH_BOARDS, MOST_FAULT_NUMBER } from '../../src/core/faults/index.ts';
import type { BenchBoard } from '../../src/core/faults/index.ts';

/** The board and the number that an address names, as far as it names them, or what is wrong with it. */
type AddressedFault =
  | { readonly board?: BenchBoard; readonly number?: number }
  | { readonly problem: string };

/** What the part of an address after '#' says of the hidden fault. */
export function faultInHash(hash: string): AddressedFault {
  const said = new URLSearchParams(hash.slice(1));
  const [givenBoard, givenNumber] = [said.get('board'), said.get('number')];
  const board = BENCH_BOARDS.find((one) => one === givenBoard);
  if (givenBoard !== null && board === undefined)
    return { problem: `Address: expected a board of ${BENCH_BOARDS.join(' or ')}, got '${givenBoard}'.` };
  const number = Number(givenNumber);
  if (givenNumber !== null && !(/^\d+$/.test(givenNumber) && number >= 1 && number <= MOST_FAULT_NUMBER))
    return { problem: `Address: expected a number from 1 to ${MOST_FAULT_NUMBER}, got '${givenNumber}'.` };
  return { ...(board && { board }), ...(givenNumber !== null && { number }) };
}

/** The part of an address that opens a board with a numbered fault. */
export function faultHash(board: BenchBoard, number: number): string {
  return `#board=${board}&number=${number}`;
}
