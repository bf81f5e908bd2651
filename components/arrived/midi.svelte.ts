/** The MIDI interfaces that the browser offers: asked for when the reader says so, never before. */
import type { TimedMessage } from '../../src/core/arrived/index.ts';

/** A jack of an interface. */
interface Port {
  readonly id: string;
  readonly name: string;
}

/** How far the asking is. `missing`: this browser has no such thing; `refused`: the reader, or a rule of the page, said no. */
type Access = 'not asked' | 'asking' | 'open' | 'missing' | 'refused';

const MILLI = 1000;

const portOf = (port: MIDIPort): Port => ({ id: port.id, name: port.name ?? 'a jack without a name' });

/** The interfaces as state; made while a component starts, and closed with it. */
export class MidiInterfaces {
  access = $state<Access>('not asked');
  outputs = $state.raw<readonly Port[]>([]);
  inputs = $state.raw<readonly Port[]>([]);
  #midi: MIDIAccess | undefined;
  #gone = (): void => undefined;

  /** `gone` is called when an interface was pulled out. */
  constructor(gone?: () => void) {
    if (gone) this.#gone = gone;
    $effect(() => () => this.#close());
  }

  /** Ask the browser; what it says stands in `access`. */
  async ask(): Promise<void> {
    if (!('requestMIDIAccess' in navigator)) {
      this.access = 'missing';
      return;
    }
    this.access = 'asking';
    try {
      this.#midi = await navigator.requestMIDIAccess();
    } catch {
      this.access = 'refused';
      return;
    }
    this.#midi.onstatechange = () => this.#look();
    this.access = 'open';
    this.#look();
  }

  /** Send a message, at once or at a moment of the page's clock, seconds; false where the output is gone. */
  send(outputId: string, bytes: readonly number[], atSeconds = 0): boolean {
    const output = this.#midi?.outputs.get(outputId);
    if (output?.state !== 'connected') return false;
    output.send([...bytes], atSeconds * MILLI);
    return true;
  }

  /** Hear an input until the function that is handed back is called. Moments are those of the page's clock, seconds. */
  listen(inputId: string, heard: (message: TimedMessage) => void): () => void {
    const input = this.#midi?.inputs.get(inputId);
    if (!input) return () => undefined;
    const take = ({ data, timeStamp }: MIDIMessageEvent): void => {
      if (data) heard({ bytes: [...data], seconds: timeStamp / MILLI });
    };
    input.onmidimessage = take;
    return () => {
      if (input.onmidimessage === take) input.onmidimessage = null;
    };
  }

  #look(): void {
    const ports = <P extends MIDIPort>(map: ReadonlyMap<string, P> | undefined): readonly Port[] =>
      [...(map?.values() ?? [])].filter(({ state }) => state === 'connected').map(portOf);
    const before = this.outputs.length + this.inputs.length;
    this.outputs = ports(this.#midi?.outputs as ReadonlyMap<string, MIDIPort> | undefined);
    this.inputs = ports(this.#midi?.inputs as ReadonlyMap<string, MIDIPort> | undefined);
    if (this.outputs.length + this.inputs.length < before) this.#gone();
  }

  #close(): void {
    if (!this.#midi) return;
    this.#midi.onstatechange = null;
    this.#midi.inputs.forEach((input) => (input.onmidimessage = null));
  }
}

/** The page's clock, seconds. */
export const secondsNow = (): number => performance.now() / MILLI;
