/** All that keeps and opens work on the bench page, fetched as one: it is there whole, or not at all and said so. */
export { default as KeepAlerts } from '../keep/KeepAlerts.svelte';
export { handKeeper } from '../keep/in-hand.ts';
export { default as BenchFiles } from './BenchFiles.svelte';
export { fromAddress } from './keep.ts';
