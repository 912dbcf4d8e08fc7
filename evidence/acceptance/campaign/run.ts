import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../../reading.ts';
import { type DetectionRates, noDetection, oneMoreDetection } from './detection-rates.ts';
import { type HealthyRates, noHealthy, oneMoreHealthy } from './healthy-rates.ts';
import { ratesPage } from './page.ts';
import { noRecovery, oneMoreRecovery, type RecoveryRates } from './recovery-rates.ts';

/** A rate that is found run by run: what is known so far, and one run more. */
interface Campaign<Rates> {
  none(): Rates;
  /** False where all the runs that were asked for are made. */
  more(rates: Rates, runs: number): boolean;
}

const healthy: Campaign<HealthyRates> = {
  none: noHealthy,
  more(rates, runs) {
    if (rates.rehearsals >= runs) return false;
    oneMoreHealthy(rates);
    return true;
  },
};
const detection: Campaign<DetectionRates> = { none: noDetection, more: oneMoreDetection };
const recovery: Campaign<RecoveryRates> = { none: noRecovery, more: oneMoreRecovery };
const campaigns: Readonly<Record<string, Campaign<never>>> = { healthy, detection, recovery } as never;

const folder = join(root, 'evidence/acceptance/rates');
/** Seconds between two writings of what is known so far. */
const chunk = 15;

/** Goes on where the file ends, until so many runs are made or the minutes are over. */
export function runCampaign(name: string, runs: number, minutes: number, date: string, commit: string): void {
  const campaign = campaigns[name] as Campaign<unknown> as Campaign<object> | undefined;
  if (campaign === undefined) throw new Error(`no campaign ${name}: ${Object.keys(campaigns).join(', ')}`);
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `${name}.json`);
  const begun = readAgain(file);
  // Runs of another state of the code do not mix with those of this one.
  const rates = begun?.code.commit === commit ? begun.rates : campaign.none();
  const write = () => {
    writeFileSync(`${file}.new`, `${JSON.stringify({ code: { date, commit }, rates }, undefined, 1)}\n`);
    renameSync(`${file}.new`, file);
  };
  const [end, start] = [Date.now() + 60_000 * minutes, Date.now()];
  for (let written = start; campaign.more(rates, runs) && Date.now() < end; ) {
    if (Date.now() - written < 1000 * chunk) continue;
    write();
    written = Date.now();
  }
  write();
}

/** The page of what is kept. */
export function writePage(): void {
  const kept = (name: string) => JSON.parse(readFileSync(join(folder, `${name}.json`), 'utf8'));
  const page = join(root, 'docs/acceptance-rates.md');
  writeFileSync(`${page}.new`, ratesPage(kept('healthy'), kept('detection'), kept('recovery')));
  renameSync(`${page}.new`, page);
}

function readAgain(file: string): { code: { commit: string }; rates: object } | undefined {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return undefined;
  }
}
