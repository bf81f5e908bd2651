/** Tasks on joints: which are made again, and how. They are judged by wetting, which is asked of the floor of making; shine decides nothing. */
import { JOINT_EDGES, JOINT_REMEDIES } from '../../../making/index.ts';
import type { JointEdge, JointRemedy } from '../../../making/index.ts';
import { SOLDER_CAUTION } from '../cautions.ts';
import { eachOf, met, whichOf } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';

/** A joint as a task tells it. */
interface Joint {
  readonly solder: 'leaded' | 'lead-free';
  readonly shine: 'shiny' | 'dull';
  readonly edge: JointEdge;
}

const isGood = ({ edge }: Joint): boolean => edge.remedy === 'leave';

const text = ({ solder, shine, edge }: Joint): string =>
  `${solder === 'leaded' ? 'Leaded' : 'Lead-free'} and ${shine}: ${edge.words}`;

/** Every joint to tell: good leaded solder is shiny, so none of it is told as dull and good. */
const JOINTS: readonly Joint[] = (['leaded', 'lead-free'] as const).flatMap((solder) =>
  (['shiny', 'dull'] as const).flatMap((shine) =>
    JOINT_EDGES.map((edge): Joint => ({ solder, shine, edge })).filter(
      (one) => !(solder === 'leaded' && shine === 'dull' && isGood(one)),
    ),
  ),
);

/** Joints in a row, by level. */
const IN_A_ROW = [4, 4, 5] as const;

const SAID_TO_JOINTS = {
  'dull means bad': 'Shine says little: good lead-free solder is often dull. Look at the edge of each.',
  'shine means good': 'A shiny one can be bad too. A ball with a sharp edge has not wetted the metal.',
  'lead-free means bad': 'Lead-free solder makes good joints. It only looks different.',
  'all of them': 'Some have wetted both metals. They can stay.',
};

/** Which joints have to be made again; at level 3, what to do with one. */
export function judgeJoints(level: Level, chance: Chance): Drawn {
  if (level === 3) return whatToDo(chance);
  // A dull one that is good, and a shiny one that is not, are always among them.
  const dullGood = chance.turn(JOINTS.filter((one) => isGood(one) && one.shine === 'dull'));
  const shinyBad = chance.turn(JOINTS.filter((one) => !isGood(one) && one.shine === 'shiny'));
  const rest = JOINTS.filter((one) => one.edge !== dullGood.edge && one.edge !== shinyBad.edge);
  const joints = [dullGood, shinyBad, ...chance.shuffled(rest)].slice(0, IN_A_ROW[level]);
  const isDull = ({ shine }: Joint): boolean => shine === 'dull';
  return {
    ask: 'Joints in the cups of a plug, seen through a glass. Which of them have to be made again?',
    ...eachOf(joints, chance, {
      text,
      right: (one) => !isGood(one),
      ticks: {
        'dull means bad': isDull,
        'shine means good': (one) => isDull(one) && !isGood(one),
        'lead-free means bad': ({ solder }) => solder === 'lead-free',
        'all of them': () => true,
      },
      said: SAID_TO_JOINTS,
    }),
    hints: [
      'A joint is judged by its edge: has the solder wetted both metals?',
      'Good solder runs out thin and flat, like water on clean glass.',
      'A ball, cracks, or a wire that hangs by the rim: again. Shine does not count.',
    ],
    caution: SOLDER_CAUTION,
    steps: [
      'Look at how the solder lies on both metals, and not at its shine.',
      `${text(dullGood)}. That is good, though it is dull.`,
      `Again: ${joints
        .filter((one) => !isGood(one))
        .map(text)
        .join('; ')}.`,
    ],
  };
}

/** What may be done with a joint; the last is never right: heat drives the flux off, and what has not wetted stays so. */
const REMEDY_TEXTS: Readonly<Record<JointRemedy | 'heat', string>> = {
  leave: 'It is a good one: leave it as it is, and go on',
  flux: 'It has not wetted: heat both metals, with flux',
  still: 'It was moved as it set: heat it, and hold it still',
  strip: 'Too little bare wire: take it out, and strip more',
  heat: 'It wants more heat: press the bare iron on for long',
};

function whatToDo(chance: Chance): Drawn {
  const joint = chance.turn(byRemedy());
  const { remedy } = joint.edge;
  return {
    ask: `A joint in the cup of a plug. ${text(joint)}. What is to be said of it, and done?`,
    ...whichOf(
      ['heat', ...JOINT_REMEDIES] as const,
      remedy,
      (one) => REMEDY_TEXTS[one],
      (one) => met(SAID_TO_REMEDY, mistakenRemedy(one, joint)),
      chance,
    ),
    hints: [
      'Judge it by its edge, whatever its shine.',
      'Where it has not wetted, the metal was too cold or not clean. Where it is wrinkled, it was moved.',
      'Solder wets hot metal with the help of flux.',
    ],
    caution: SOLDER_CAUTION,
    steps: [
      remedy === 'leave' ? 'It has wetted both metals.' : 'It is not a good joint, whatever its shine.',
      `${REMEDY_TEXTS[remedy]}.`,
    ],
  };
}

/** Joints by turns of what to do with them, so that no remedy is right more often than another. */
function byRemedy(): readonly Joint[] {
  const groups = JOINT_REMEDIES.map((remedy) => JOINTS.filter((one) => one.edge.remedy === remedy));
  const most = Math.max(...groups.map(({ length }) => length));
  return Array.from({ length: most }, (_, round) =>
    groups.map((group) => group[round % group.length] as Joint),
  ).flat();
}

const SAID_TO_GOOD = 'It has wetted wire and cup. Each new heating makes it worse, and the plug soft.';
const SAID_TO_LEAVING =
  'Look at how it lies on the metal. It holds today, and parts when somebody treads on the lead.';
const SAID_TO_REMEDY = {
  'heat without flux':
    'Heat alone burns what flux is left, and melts the plug. Solder wets with flux, on hot metal.',
  'dull means bad': SAID_TO_GOOD,
  'touches a good joint': SAID_TO_GOOD,
  'shine means good': SAID_TO_LEAVING,
  'leaves a bad joint': SAID_TO_LEAVING,
  'another cause':
    'That helps against something else. What went wrong here: no wetting, a move, or too little bare wire?',
};

function mistakenRemedy(said: JointRemedy | 'heat', { edge, shine }: Joint): keyof typeof SAID_TO_REMEDY {
  if (said === 'heat') return 'heat without flux';
  if (edge.remedy === 'leave') return shine === 'dull' ? 'dull means bad' : 'touches a good joint';
  if (said === 'leave') return shine === 'shiny' ? 'shine means good' : 'leaves a bad joint';
  return 'another cause';
}
