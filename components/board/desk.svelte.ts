/** The board on the desk: the plan with its past, its check, what the reader has in hand, and what is said to them. */
import { connect } from '../../src/core/board/index.ts';
import { edited, findJack, makePlan, moveDevice, sayEdit } from '../../src/core/plan/index.ts';
import type { Connected, Finding } from '../../src/core/board/index.ts';
import type { LinkMemory } from '../../src/core/verdict/index.ts';
import type { JackPlace, Plan } from '../../src/core/plan/index.ts';
import { History } from '../parts/history.svelte.ts';
import { Due } from '../parts/turns.svelte.ts';
import { Checker } from './checker.svelte.ts';
import { NOTHING_SHOWN, isAt } from './session.ts';
import type { Chosen, Shown, Word } from './session.ts';
import { capital } from '../../src/core/verdict/index.ts';

/** Two jacks on their way to be joined. */
interface Joining {
  readonly output: JackPlace;
  readonly input: JackPlace;
}

/** A board being worked on, made while a component starts: what the reader does goes through here, and what the page shows is read from here. */
export class Desk {
  /** Links solved once are not solved again. */
  readonly memory: LinkMemory;
  readonly checker: Checker;
  history = $state.raw(new History<Plan>(makePlan({})));
  chosen = $state.raw<Chosen>();
  picked = $state.raw<JackPlace>();
  /** Two jacks whose leads are being chosen in the background. */
  joining = $state.raw<Joining>();
  word = $state.raw<Word>();
  found = $state.raw<Finding>();
  step = $state.raw<Shown>();

  /** What is said to be done, or being solved, and is not done yet. */
  readonly #due = new Due();

  readonly plan = $derived(this.history.now);
  readonly device = $derived(
    this.chosen?.kind === 'device'
      ? this.plan.devices.find(({ name }) => name === this.chosen?.name)
      : undefined,
  );
  readonly link = $derived(
    this.chosen?.kind === 'link' ? this.plan.links.find(({ name }) => name === this.chosen?.name) : undefined,
  );
  readonly shown = $derived<Shown>(this.step ?? this.found?.where ?? NOTHING_SHOWN);

  /** `start` starts the worker of the checker; without it, that of the page. */
  constructor(memory: LinkMemory, start?: () => Worker) {
    this.memory = memory;
    this.checker = new Checker(() => this.plan, memory, start);
    $effect(() => {
      // A worker that could not be had leaves nobody waiting.
      if (this.checker.problem !== '') this.finish();
    });
  }

  say = (word: Word | undefined): void => {
    this.word = word;
  };

  /** Put a changed plan in the place of this one; one that no file could hold is refused aloud. */
  change = (next: Plan): void => {
    const edit = edited(next);
    if (!edit.ok) return this.say({ text: sayEdit(edit.problem), bad: true });
    this.history.do(next);
    this.#settle();
    if (this.picked && !findJack(next, this.picked)) this.picked = undefined;
  };

  travel = (way: 'undo' | 'redo'): void => {
    this.finish();
    const told = this.history.tells(way);
    if (told === '') return;
    this.sayFirst(told, () => {
      this.history[way]();
      this.#settle();
      this.picked = undefined;
    });
  };

  /** Say what is done, let that be painted, and only then do it: a press is answered before the board is drawn anew. */
  sayFirst = (text: string, work: () => void): void => {
    this.finish();
    const word = { text, bad: false };
    this.say(word);
    this.#due.afterPaint(() => {
      work();
      this.word ??= word;
    });
  };

  /** Do at once what is said to be done: whatever the reader does next is done to the board as it is then. */
  finish = (): void => this.#due.finish();

  /** The reader reaches for something on the page. */
  reached = (): void => this.#due.reached();

  /** The plan that was kept: there is nothing before it to go back to. */
  begin(plan: Plan): void {
    this.history = new History(plan);
  }

  open = (plan: Plan): void => {
    this.finish();
    this.change(plan);
    this.chosen = undefined;
    this.picked = undefined;
  };

  move = (device: string, xCentimetres: number, yCentimetres: number): void => {
    const moved = moveDevice(this.plan, device, xCentimetres, yCentimetres);
    this.change(moved);
    if (this.plan === moved)
      this.say({
        text: `${device}: ${xCentimetres} cm from the left, ${yCentimetres} cm from the back.`,
        bad: false,
      });
  };

  /** The leads are chosen in the background, so that the press is answered at once. */
  join = (from: JackPlace, to: JackPlace): void => {
    this.finish();
    const [output, input] = findJack(this.plan, from)?.direction === 'out' ? [from, to] : [to, from];
    const joined = (made: Connected): void => this.#joined(made, output, input);
    this.joining = { output, input };
    this.#due.wait(() => joined(connect(this.plan, output, input, this.memory)));
    if (!this.checker.join(output, input, joined)) this.finish();
  };

  #joined(made: Connected, output: JackPlace, input: JackPlace): void {
    this.#due.drop();
    this.checker.forget();
    this.joining = undefined;
    this.picked = undefined;
    if (!made.ok) return this.say({ text: sayEdit(made.problem), bad: true });
    this.change(made.plan);
    this.chosen = { kind: 'link', name: made.link };
    const leads = made.leads.map(({ name }) => name).join(' and ');
    const notes = made.notes.map((note) => ` ${capital(note)}.`).join('');
    const doubt = made.works ? '' : ' No lead that is available makes it work; see what the check found.';
    this.say({
      text: `${made.link} joins ${output.device}: ${output.jack} to ${input.device}: ${input.jack} with ${leads}.${notes}${doubt}`,
      bad: !made.works,
    });
  }

  /** Pick a jack, let it go, or join it to the one in hand. */
  press = (place: JackPlace): void => {
    const { plan, picked } = this;
    const jack = findJack(plan, place);
    const held = picked && findJack(plan, picked);
    if (!jack) return;
    if (isAt(picked, place.device, place.jack)) return this.letGo();
    if (picked && held && held.direction !== jack.direction) return this.join(picked, place);
    this.picked = { device: place.device, jack: place.jack };
    this.checker.ready();
    const other = jack.direction === 'out' ? 'an input' : 'an output';
    this.say({
      text: `${place.jack} of '${place.device}' is picked. Now ${other} of another device; press it again to let go.`,
      bad: false,
    });
  };

  letGo = (): void => {
    this.picked = undefined;
    this.word = undefined;
  };

  /** With a jack in hand, pressing a device that has just one jack it can go to joins them. */
  choose = (next: Chosen | undefined): void => {
    const { plan, picked } = this;
    const held = picked && findJack(plan, picked);
    if (picked && held && next?.kind === 'device' && next.name !== picked.device) {
      const jacks = plan.devices.find(({ name }) => name === next.name)?.jacks ?? [];
      const [only, ...others] = jacks.filter(({ direction }) => direction !== held.direction);
      if (only && others.length === 0) return this.join(picked, { device: next.name, jack: only.name });
    }
    this.chosen = next;
  };

  showFinding = (finding: Finding | undefined): void => {
    this.found = finding;
    this.step = undefined;
  };

  showStep = (step: Shown | undefined): void => {
    this.step = step;
    if (step) this.found = undefined;
  };

  /** What was shown or said belonged to the plan before. */
  #settle(): void {
    this.found = undefined;
    this.word = undefined;
  }
}
