// The pages of docs/method, made from the workings: `npm run docs`, after a build. A test holds them against the code.
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = new URL('../', import.meta.url);
const folder = new URL('docs/method/', root);

/** Every page by its file name. `core` and `files` are the packages, built or as source: the pages are the same. */
export function methodPages(core, files) {
  const rooms = core.workingsByRoom.filter(({ workings }) => workings.length > 0);
  const pages = rooms.map(({ room, workings }) => [`${room}.md`, pageOf(core, files, room, workings)]);
  return Object.fromEntries([['README.md', indexPage(core, rooms)], ...pages]);
}

function indexPage(core, rooms) {
  const rows = rooms.flatMap(({ room, workings }) =>
    workings.map((each) => [`[${room}](${room}.md)`, `[\`${each.name}\`](${room}.md#${each.name})`, each.title]),
  );
  return text([
    '# Methods',
    'Every public formula of the house with its validity, its source and how the source is known. Made from the code by ' +
      '`npm run docs`; what is changed here by hand is lost.',
    'The rooms stand in the order in which a signal and a design travel. A result that is held against other ' +
      "people's numbers names them; where nobody's are at hand, it says so.",
    table(['room', 'working', 'what it gives'], rows),
    `${rows.length} workings; every one runs as \`soundpost work NAME\`.`,
    acquaintances(core),
  ]);
}

/** What the words behind a source mean. */
function acquaintances({ sources }) {
  const meaning = {
    read: 'read in the source itself',
    'second-hand': 'as a public page or another book gives it',
    'from memory': 'as an engineer remembers it: confirm before relying on it',
    'common practice, no source': 'a habit of the trade without a source to name',
    'computed here': 'worked out by the authors of this project, by another way than the code',
  };
  const count = (how) => sources.filter((each) => each.how === how).length;
  const rows = Object.entries(meaning).map(([how, words]) => [how, words, String(count(how))]);
  return text(['## How a source is known', table(['word', 'meaning', 'sources'], rows)]).trim();
}

function pageOf(core, files, room, workings) {
  const { question } = readmeOf(room);
  return text([
    `# ${capital(room)}`,
    question,
    workings.map((each) => `- [${each.title}](#${each.name})`).join('\n'),
    ...workings.map((each) => sectionOf(core, files, each)),
  ]);
}

/** The question a room answers, from its own README. */
function readmeOf(room) {
  const lines = readFileSync(new URL(`packages/core/src/${room}/README.md`, root), 'utf8');
  const question = /What question: ([\s\S]*?\?)/.exec(lines)?.[1] ?? '';
  return { question: capital(question.replace(/\s+/g, ' ')) };
}

function sectionOf(core, files, working) {
  const { fieldOf, isOptional, kebab, showClause } = core;
  const inputs = Object.entries(working.inputs).map(([name, entry]) => {
    const field = fieldOf(entry);
    const left = isOptional(entry) ? ' (may be left out)' : '';
    return [`\`${kebab(name)}\``, letter(field), `${field.meaning}${left}`, code(field.example)];
  });
  const outputs = Object.entries(working.outputs).map(([name, { field, formula, optional }]) => [
    `\`${kebab(name)}\``,
    `${field.meaning}${optional === true ? ' (where the inputs give it)' : ''}`,
    code(formula),
  ]);
  return text([
    `<a id="${working.name}"></a>`,
    `## ${working.title}`,
    table(['input', 'letter', 'what it is', 'for example'], inputs),
    table(['result', 'what it is', 'formula'], outputs),
    `**Validity:** ${capital(working.holds.replace(/\.$/, ''))}.`,
    ['**Sources**', ...working.sources.map((each) => `- ${showClause(each)}. ${each.source.note}`)].join('\n'),
    exampleOf(core, files, working),
    heldAgainst(core, working),
  ]).trim();
}

function exampleOf(core, files, working) {
  const { calculate, wording } = core;
  const worked = calculate(working, contentOf(core, files, working));
  const rows = worked.results.map((each) => [`\`${each.name}\``, each.shown, code(each.substituted)]);
  const findings = worked.findings.map((each) => `- ${wording(each)}`);
  return text([
    '**Worked example**',
    `\`\`\`sh\n${commandOf(working)}\n\`\`\``,
    table(['result', 'value', 'with the numbers put in'], rows),
    ...(findings.length === 0 ? [] : [['It also says:', '', ...findings].join('\n')]),
  ]).trim();
}

function commandOf({ name, example }) {
  const inputs = Object.entries(example).map(([key, value]) =>
    /^[\w./+-]+$/.test(value) ? `${key}=${value}` : `${key}="${value}"`,
  );
  return ['soundpost work', name, ...inputs].join(' ');
}

/** The inputs of the example, files replaced by what stands in them. */
function contentOf({ fieldOf, kebab }, { placedYaml, plainOf, textFile }, { inputs, example }) {
  const names = Object.keys(inputs).filter((name) => fieldOf(inputs[name]).type === 'file');
  const read = (path) => plainOf(placedYaml(textFile(readFileSync(new URL(path, root)), path)));
  return { ...example, ...Object.fromEntries(names.map((name) => [kebab(name), read(example[kebab(name)])])) };
}

/** Whose numbers the results are compared with, to their last printed digit. */
function heldAgainst({ printedNumbers, showClause }, working) {
  const printed = printedNumbers.filter((each) => each.working.name === working.name);
  if (printed.length === 0) return "**Held against** nobody's printed numbers yet.";
  const counts = new Map();
  for (const each of printed) {
    const clause = showClause(each.source);
    counts.set(clause, (counts.get(clause) ?? 0) + Object.keys(each.printed).length);
  }
  const lines = [...counts].map(([clause, count]) => `- ${clause}: ${count} ${count === 1 ? 'number' : 'numbers'}`);
  return ['**Held against** numbers printed by others, to their last digit', ...lines].join('\n');
}

const letter = (field) => (field.symbol === undefined ? '' : code(field.symbol));
const code = (words) => (words === '' ? '' : `\`${words.replace(/`/g, "'")}\``);
const capital = (words) => words.slice(0, 1).toUpperCase() + words.slice(1);
const cell = (words) => words.replace(/\|/g, '\\|').replace(/\n/g, ' ');
const row = (cells) => `| ${cells.map(cell).join(' | ')} |`;

function table(head, rows) {
  return [row(head), `|${head.map(() => '---').join('|')}|`, ...rows.map(row)].join('\n');
}

/** Blocks with one empty line between them. */
function text(blocks) {
  return `${blocks.filter((each) => each !== '').join('\n\n')}\n`;
}

/** Writes the pages, and removes those of rooms that are gone. */
export function writePages(pages) {
  mkdirSync(folder, { recursive: true });
  for (const name of readdirSync(folder)) if (!(name in pages)) rmSync(new URL(name, folder));
  for (const [name, page] of Object.entries(pages)) writeFileSync(new URL(name, folder), page);
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const [core, files] = await Promise.all([import('@soundpost/core'), import('@soundpost/files')]);
  const pages = methodPages(core, files);
  writePages(pages);
  console.log(`${Object.keys(pages).length} pages in ${fileURLToPath(folder)}`);
}
