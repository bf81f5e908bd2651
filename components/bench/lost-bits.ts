/** What is fetched only where bits may be lost behind the LED: of the floor that sends them, this alone. */
export { sayLostBits } from '../../src/core/signal/index.ts';
