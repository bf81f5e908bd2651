/** The circuits of a board solved off the main thread. */
import type { CheckProgress } from '../../src/core/board/index.ts';
import { answerOrders } from '../parts/orders.ts';
import { boardSolver } from './board-solver.ts';
import type { BoardAnswer, BoardOrder } from './board-solver.ts';

answerOrders<BoardOrder, BoardAnswer, CheckProgress>(boardSolver());
