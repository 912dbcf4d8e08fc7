// Takes the pictures of docs/user-guide from the real page: `npm run build && node tools/pictures.mjs`. A page that was
// built elsewhere is named by its folder; names of pictures behind it take only those.
// Needs a Chromium; CHROMIUM names it where it is not /usr/bin/chromium.
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { workbench } from '@soundpost/server';
import { openXlsx, saveXlsx } from 'hucre/xlsx';
import { chromium } from 'playwright-core';

const root = resolve(import.meta.dirname, '..');
const into = join(root, 'docs/user-guide');
const desk = { width: 1440, height: 900 };
const phone = { width: 390, height: 844 };
const horizontal = '/point/P-301/pump-drive-end-horizontal';
const rows = [
  'Machine;Point;Location;Direction;Installation;Transducer;Mount;Cable;Length [m];Input',
  'P-301;motor-drive-end;motor, drive end;vertical;portable;ACC-100;stud;TSP;12;PORT-24',
  'P-301;pump-drive-end-loop;;;;;;;90;',
  'P-301;motor-other-end;motor, other end;vertical;portable;ACC-1000;stud;TSP;12;PORT-24',
].join('\n');

/** Each picture: its name, the address, and what is done before it is taken. */
const pictures = [
  ['walk', '/'],
  ['points', '/', putAway],
  ['paste', '/', pasteRows],
  ['paste-at-cell', '/', pasteAtCell],
  ['print', '/', onPaper],
  ['machine', '/machine/P-301'],
  ['machine-new', '/', newMachine],
  ['machine-built', '/machine/P-301', openElement],
  ['rename', '/machine/P-301', rename],
  ['remove', '/machine/P-301', remove],
  ['point', horizontal],
  ['point-held', horizontal, swapMount],
  ['point-shortlist', horizontal, (page) => showSheet(page, 'Shortlist')],
  ['point-noise', horizontal, (page) => showSheet(page, 'Noise')],
  ['rehearsal-asked', `${horizontal}/rehearsal`, putInSpall],
  ['rehearsal-seen', `${horizontal}/rehearsal`, rehearse],
  ['findings', '/findings'],
  ['catalogue', '/catalogue/ACC-100'],
  ['workings', '/workings/mounted-response'],
  ['issue', '/issue', chooseDocuments],
  ['issue-conflict', '/issue', takeBack],
  ['issue-difference', '/issue', compareWithNow],
];

const folder = mkdtempSync(join(tmpdir(), 'soundpost-pictures-'));
const plant = join(folder, 'plant.yaml');
copyFileSync(join(root, 'examples/raw-water-pump/plant.yaml'), plant);
mkdirSync(into, { recursive: true });
const bench = await workbench({
  plant,
  port: 0,
  genericCatalogue: join(root, 'packages/files/catalogues/generic.yaml'),
  page: process.argv[2] ?? join(root, 'packages/web/dist'),
});
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox'],
});
try {
  const context = await browser.newContext({ viewport: desk, colorScheme: 'light', reducedMotion: 'reduce' });
  await context.request.get(bench.newAddress());
  const page = await context.newPage();
  const wanted = (name) => process.argv.length < 4 || process.argv.slice(3).includes(name);
  for (const [name, address, act] of pictures) if (wanted(name)) await taken(page, name, address, act);
  await page.setViewportSize(phone);
  if (wanted('point-phone')) await taken(page, 'point-phone', horizontal);
} finally {
  await browser.close();
  await bench.close();
  rmSync(folder, { recursive: true });
}

async function taken(page, name, address, act) {
  await page.goto(`http://127.0.0.1:${bench.port}${address}`);
  await settled(page);
  await page.evaluate(() => document.fonts.ready);
  await act?.(page);
  await settled(page);
  const path = join(into, `${name}.png`);
  await page.screenshot({ path });
  await page.emulateMedia({ media: null });
  console.log(path);
}

/** Until the whole plant is worked out and the view waits for nothing. */
async function settled(page) {
  await page.waitForFunction(
    () =>
      document.querySelector('.title-bar .verdict-line .outcome') !== null &&
      document.querySelector('main .waiting') === null,
  );
}

/** The first walk is put away; it stays away for the pictures that follow. */
async function putAway(page) {
  await page.getByRole('button', { name: 'Put away' }).click();
}

async function swapMount(page) {
  await page.getByRole('combobox', { name: 'Mount' }).selectOption('magnet-2pole');
  await page.locator('.point-verdict .outcome.fails').waitFor();
}

async function showSheet(page, title) {
  await page.getByRole('tab', { name: title, exact: true }).click();
  await settled(page);
  // To the top of the window, below the bar that stays there.
  await page.getByRole('heading', { name: 'Sheets of this point' }).evaluate((heading) => {
    heading.scrollIntoView();
    scrollBy(0, -72);
  });
}

/** A block of a spreadsheet, put at the length of the first point; where the lengths come from is said. */
async function pasteAtCell(page) {
  await page.locator('.of-cableLength').first().click();
  await page.locator('.point-grid').evaluate((grid) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', '3 m\tONL-24\n90 m\t');
    grid.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
  });
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('combobox', { name: 'Status' }).selectOption('drawing');
  await dialog.getByRole('textbox', { name: 'Source of these values' }).fill('cable list, sheet 4');
  await dialog.getByText('now: drawing, cable list, sheet 4').last().waitFor();
}

async function toTop(page, name) {
  for (const away of ['Put away', 'Close']) {
    const button = page.getByRole('button', { name: away, exact: true });
    if ((await button.count()) > 0) await button.first().click();
  }
  await page.getByRole('heading', { name, exact: true }).evaluate((heading) => {
    heading.scrollIntoView();
    scrollBy(0, -72);
  });
}

/** The choice of documents, above what stands issued. */
async function chooseDocuments(page) {
  await page.getByRole('button', { name: /^Issue revision/ }).waitFor();
  await toTop(page, 'What is issued');
}

/** Tables issued into a folder of this picture; a length then changed in the plant by another program. */
async function issueTables(page, name) {
  await page.getByRole('textbox', { name: 'Folder beside the plant' }).fill(name);
  for (const form of ['PDF', 'CSV', 'SVG', 'HTML']) {
    await page.getByRole('checkbox', { name: new RegExp(`^${form} `) }).uncheck();
  }
  await page.getByRole('button', { name: 'Issue revision A' }).click();
  await page.getByText('Issued.', { exact: true }).waitFor({ timeout: 120_000 });
  const stated = readFileSync(plant, 'utf8');
  writeFileSync(plant, stated.replace('value: 85 m', 'value: 87 m'));
  await page.waitForTimeout(2000);
  await settled(page);
}

/** A workbook edited in three cells: one understood, one in conflict, one refused. */
async function takeBack(page) {
  await issueTables(page, 'sent');
  const book = await openXlsx(new Uint8Array(readFileSync(join(folder, 'sent/revision-A/cable-schedule.xlsx'))));
  const { rows } = book.sheets[0];
  const row = rows.find((each) => String(each[0]).startsWith('P-301/pump-drive-end-loop'));
  const typed = { 'Length, m': 90, 'Apart by': '300 mm', From: 'elsewhere' };
  for (const [head, value] of Object.entries(typed)) row[rows[0].indexOf(head)] = value;
  await page.getByLabel('Edited table', { exact: true }).setInputFiles({
    name: 'cable-schedule.xlsx',
    mimeType: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
    buffer: Buffer.from(await saveXlsx(book)),
  });
  await page.getByText(/^1 understood, 1 in conflict, 1 refused/).waitFor();
  await toTop(page, 'Take edited tables back');
}

async function compareWithNow(page) {
  const stated = readFileSync(plant, 'utf8');
  writeFileSync(plant, stated.replace('value: 87 m', 'value: 85 m'));
  await page.waitForTimeout(2000);
  await settled(page);
  await issueTables(page, 'compared');
  await page.getByRole('button', { name: 'Compare' }).click();
  await page.getByRole('region', { name: 'Stated otherwise' }).getByText('87 m').waitFor({ timeout: 60_000 });
  await toTop(page, 'What changed');
}

/** The table as it goes to the printer. */
async function onPaper(page) {
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  await page.locator('.printed-points').waitFor();
}

async function newMachine(page) {
  await page.getByRole('button', { name: /^Add a machine/ }).click();
  const said = [
    ['Tag', 'P-302'],
    ['What it is', 'Raw-water pump, the spare'],
    ['Its first shaft', 'motor'],
  ];
  for (const [label, words] of said) await page.getByRole('dialog').getByLabel(label).fill(words);
}

/** The shafts, and the sheet of an element opened below them. */
async function openElement(page) {
  await page.locator('details.sheet-form', { hasText: 'impeller' }).last().locator('summary').first().click();
  await page.getByRole('heading', { name: 'Shafts' }).evaluate((heading) => {
    heading.scrollIntoView();
    scrollBy(0, -72);
  });
}

async function rename(page) {
  await page.locator('[aria-label="Rename… element pump-drive-end"]').evaluate((button) => button.click());
  await page.getByRole('textbox', { name: /^New name/ }).fill('bearing-2');
  await page.getByText('This follows the new name').waitFor();
}

async function remove(page) {
  await page.getByRole('button', { name: 'Take away… shaft pump' }).click();
  await page.getByText('This goes from the plant file').waitFor();
}

async function pasteRows(page) {
  await page
    .getByRole('button', { name: /^Paste a table/ })
    .first()
    .click();
  await page.getByRole('dialog').getByRole('textbox').first().fill(rows);
  await page.getByText('1 refused').waitFor();
}

/** A spall, and a second chain beside the chosen one. */
async function putInSpall(page) {
  if ((await page.getByRole('button', { name: 'Put away' }).count()) > 0) await putAway(page);
  await page.getByRole('button', { name: 'Put in a fault' }).click();
  await page.getByRole('combobox', { name: 'Fault', exact: true }).selectOption('outer-ring');
  await page.getByRole('combobox', { name: 'At', exact: true }).selectOption('pump-drive-end');
  await page.getByLabel('Send the same motion through a second chain').check();
  await page.getByRole('combobox', { name: 'transducer', exact: true }).selectOption('PVT-4');
}

/** The same, seen through both chains. */
async function rehearse(page) {
  await putInSpall(page);
  await page.getByRole('button', { name: 'Rehearse', exact: true }).click();
  const heading = page.getByRole('heading', { name: 'What an analyst sees' });
  await heading.waitFor({ timeout: 120_000 });
  await heading.evaluate((each) => {
    each.scrollIntoView();
    scrollBy(0, -72);
  });
}
