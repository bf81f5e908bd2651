/** The plan as a file: its types live with the board, which stands below the files. */
export {
  PLAN_DEFAULTS,
  PLAN_FORMAT,
  PLAN_LIMITS,
  PLAN_VERSION,
  findJack,
  linkOf,
  makePlan,
  planOfLink,
} from '../board/plan.ts';
export type { Device, JackPlace, Plan, PlanBranch, PlanJack, PlanLead, PlanLink } from '../board/plan.ts';
