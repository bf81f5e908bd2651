import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Programs that are looked for on PATH, in this order. */
const CHROMIUMS = ['chromium', 'chromium-browser', 'google-chrome'] as const;
/** The same Chromium without tabs and menus, which no test sees: its tests take two thirds of the time. */
const SHELL = 'chromium-headless-shell';
const FIREFOXES = ['firefox-esr', 'firefox'] as const;

/** Arguments for every start of the browser in a test: no window, no graphics card, no traffic of its own. */
export const BROWSER_ARGUMENTS: readonly string[] = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
];

/** What a person reads when there is no browser and none could be installed. */
export const NO_BROWSER = [
  'No Chromium was found, so the tests of widgets and pages cannot run.',
  'Install one (Debian: `sudo apt-get install chromium-headless-shell`; elsewhere Chromium in your usual way),',
  'or set CHROMIUM_PATH to the program of a Chromium that is already there, and run `npm test` again.',
].join('\n');

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** What a person reads when there is no Firefox. */
export const NO_FIREFOX = [
  'No Firefox was found. Install one (Debian: `sudo apt-get install firefox-esr`; elsewhere your usual way),',
  'or set FIREFOX_PATH to the program of a Firefox that is already there, and run `npm run firefox` again.',
].join('\n');

/** The program that variable `name` names, else the first of `programs` on PATH. Throws when the variable names no program. */
function find(name: string, programs: readonly string[], environment: NodeJS.ProcessEnv): string | undefined {
  const chosen = environment[name];
  if (chosen !== undefined && chosen !== '') {
    if (isProgram(chosen)) return chosen;
    throw new Error(`${name}: must be the path of a program that can be run, got '${chosen}'`);
  }
  const folders = (environment['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  return programs.flatMap((program) => folders.map((folder) => join(folder, program))).find(isProgram);
}

/**
 * The path of the system's Chromium as readers have it: CHROMIUM_PATH when set, else the first of the usual names on PATH.
 * Undefined when there is none. Throws when CHROMIUM_PATH is set to something that is not a program.
 */
export function findBrowser(environment: NodeJS.ProcessEnv = process.env): string | undefined {
  return find('CHROMIUM_PATH', [...CHROMIUMS, SHELL], environment);
}

/** The path of the Chromium that tests run in, found as that of readers is, but without tabs and menus where there is one. */
export function findTestBrowser(environment: NodeJS.ProcessEnv = process.env): string | undefined {
  return find('CHROMIUM_PATH', [SHELL, ...CHROMIUMS], environment);
}

/** Arguments for the browser of the tests: pages share a process, and with it what was compiled for the test before. */
export const TEST_ARGUMENTS: readonly string[] = [...BROWSER_ARGUMENTS, '--process-per-site'];

/** The path of the system's Firefox, found as that of Chromium is: FIREFOX_PATH when set, else on PATH. */
export function findFirefox(environment: NodeJS.ProcessEnv = process.env): string | undefined {
  return find('FIREFOX_PATH', FIREFOXES, environment);
}

/**
 * Install Chromium with apt-get, where that can work: as root, on a system that has apt-get.
 * Returns the path of the browser, or undefined when it could not be installed. Prints what it does.
 */
export function installBrowser(): string | undefined {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return undefined;
  console.log('No browser found: installing Chromium with apt-get.');
  const run = (...commands: readonly string[]) =>
    spawnSync('/usr/bin/apt-get', commands, {
      stdio: 'inherit',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    }).status === 0;
  const install = () =>
    [SHELL, CHROMIUMS[0]].some((name) => run('install', '--yes', '--no-install-recommends', name));
  // The lists of packages may be missing or old, as in a fresh container.
  if (!install() && !(run('update') && install())) return undefined;
  return findTestBrowser();
}
