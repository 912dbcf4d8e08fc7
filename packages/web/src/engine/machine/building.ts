import { elementKindCalled, installations, type PlantMachine } from '@soundpost/core';
import type { Edit } from '@soundpost/server/protocol';
import type { PlantSession } from '../plant-session.ts';
import type { BuildingAsked, Built } from './building-views.ts';
import { heard } from './heard.ts';
import { rolesOf } from './kind-forms.ts';
import { moved } from './moved.ts';
import { entryNameDoubt, lineNameDoubt } from './name-doubts.ts';
import { removed } from './removed.ts';
import { renamed } from './renamed.ts';
import { yamlScalar } from './statement-edits.ts';

type Asked<Act extends BuildingAsked['act']> = Extract<BuildingAsked, { readonly act: Act }>;
type Acts = { readonly [Act in BuildingAsked['act']]: (asked: Asked<Act>, session: PlantSession) => Built };

/** What the edits of a plant are that build something onto it, take something from it or put it another way. */
export function built(asked: BuildingAsked, session: PlantSession): Built {
  return (acts[asked.act] as (asked: BuildingAsked, session: PlantSession) => Built)(asked, session);
}

const acts: Acts = {
  'add machine': ({ name, title, shaft, before }, session) => {
    const names = session.plant!.machines.map((each) => each.name);
    const doubt = entryNameDoubt(name, names, 'machine') ?? lineNameDoubt(shaft, [], 'shaft');
    if (doubt !== undefined) return { refused: doubt };
    if (title.trim() === '') return { refused: 'What the machine is, in words: it stands over everything printed.' };
    const yaml = [
      `title: ${yamlScalar(title.trim())}`,
      'facts: {}',
      `shafts: [${yamlScalar(shaft.trim())}]`,
      'elements: {}',
      `operation: { shaft: ${yamlScalar(shaft.trim())}, speed: unknown }`,
      'points: {}',
    ].join('\n');
    return adding(`Machine ${name.trim()}`, [put(['machines', name.trim()], yaml, before)]);
  },
  'add shaft': ({ machine, name, before }, session) =>
    at(session, machine, (stated) => {
      const { shafts } = stated.train;
      const doubt = lineNameDoubt(name, shafts, 'shaft');
      if (doubt !== undefined) return { refused: doubt };
      const index = before === undefined ? -1 : shafts.indexOf(before);
      const path = ['machines', machine, 'shafts', index < 0 ? shafts.length : index];
      const place = index < 0 ? {} : { before: index };
      return adding(`Shaft ${name.trim()}`, [{ path, yaml: yamlScalar(name.trim()), ...place }]);
    }),
  'add element': ({ machine, kind, name, shafts, before }, session) =>
    at(session, machine, (stated) => {
      const { elements } = stated.train;
      const names = elements.map((each) => each.name);
      const known = elementKindCalled(kind);
      if (known === undefined) return { refused: `There is no kind '${kind}' of element.` };
      const doubt = lineNameDoubt(name, names, 'element');
      if (doubt !== undefined) return { refused: doubt };
      const roles = rolesOf(known);
      const missing = roles.find(({ role, mayBeLeftOut }) => !mayBeLeftOut && (shafts[role] ?? '') === '');
      if (missing !== undefined) return { refused: `On which shaft does it stand as '${missing.role}'?` };
      const standing = roles.flatMap(({ role }) => (shafts[role] ? [`${role}: ${yamlScalar(shafts[role])}`] : []));
      const yaml = [`kind: ${known.kind}`, ...standing].join('\n');
      return adding(`Element ${name.trim()}`, [put(['machines', machine, 'elements', name.trim()], yaml, before)]);
    }),
  'add point': ({ machine, name, location, direction, installation, before }, session) =>
    at(session, machine, (stated) => {
      const names = stated.points.map((each) => each.statement.name);
      const doubt = entryNameDoubt(name, names, 'measuring point');
      if (doubt !== undefined) return { refused: doubt };
      if (!(installations as readonly string[]).includes(installation)) {
        return { refused: `Is the chain ${installations.join(' or ')}?` };
      }
      const said = (text: string) => (text.trim() === '' ? 'unknown' : yamlScalar(text.trim()));
      const yaml = [
        `location: ${said(location)}`,
        `direction: ${said(direction)}`,
        `installation: ${installation}`,
        'surface-temperature: unknown',
        'targets: {}',
      ].join('\n');
      return adding(`Measuring point ${name.trim()}`, [
        put(['machines', machine, 'points', name.trim()], yaml, before),
      ]);
    }),
  'add state': ({ machine, name, at: speed }, session) =>
    at(session, machine, (stated) => {
      const names = ['lowest', 'highest', ...stated.train.operation.states.map((each) => each.name)];
      const doubt = lineNameDoubt(name, names, 'operating state');
      if (doubt !== undefined) return { refused: doubt };
      if (speed.trim() === '')
        return { refused: 'A state is a speed or line frequency with its unit, such as 1480 r/min.' };
      const path = ['machines', machine, 'operation', 'states', name.trim()];
      return adding(`Operating state ${name.trim()}`, [{ path, yaml: yamlScalar(speed.trim()) }]);
    }),
  remove: removed,
  rename: renamed,
  hear: heard,
  move: moved,
  'run by': ({ machine, by, of }, session) =>
    at(session, machine, ({ train: { operation } }) => {
      const now = operation.by === 'shaft' ? operation.shaft : operation.motor;
      if (operation.by === by && now === of) return { refused: `It is run by that already.` };
      const path = (key: string) => ['machines', machine, 'operation', key];
      const label = by === 'shaft' ? `Run by the speed of shaft ${of}` : `Run by the line frequency of ${of}`;
      const [own, ownRange] = by === 'shaft' ? ['shaft', 'speed'] : ['motor', 'line-frequency'];
      const [other, otherRange] = by === 'shaft' ? ['motor', 'line-frequency'] : ['shaft', 'speed'];
      if (operation.by === by) return adding(label, [{ path: path(own), yaml: yamlScalar(of) }], 'changed');
      if (operation.states.length > 0) {
        const names = operation.states.map((each) => each.name).join(', ');
        const as = operation.by === 'shaft' ? 'speeds of a shaft' : 'line frequencies of a motor';
        return {
          refused: `The states ${names} are stated as ${as}, and would be read otherwise. Take them away first.`,
        };
      }
      const edits: readonly Edit[] = [
        { path: path(own), yaml: yamlScalar(of), before: other },
        { path: path(ownRange), yaml: 'unknown', before: otherRange },
        { path: path(other), yaml: undefined },
        { path: path(otherRange), yaml: undefined },
      ];
      const range = operation.range.known ? operation.range.written : 'unknown';
      const said = `the ${otherRange.replace('-', ' ')}, stated as ${range}`;
      return { label, edits, takesAlong: [said], unsettles: [] };
    }),
  'stand on': ({ machine, element, role, shaft }, session) =>
    at(session, machine, ({ train: { elements } }) => {
      const found = elements.find((each) => each.name === element);
      if (found === undefined) return { refused: `${machine} has no element '${element}'.` };
      const path = ['machines', machine, 'elements', element];
      const place = (each: string): Edit => ({ path: [...path, each], yaml: standing(shafts[each]) });
      const kind = elementKindCalled(found.kind)!;
      const now = Object.fromEntries(Object.entries<string>(found.shafts));
      const shafts: Record<string, string> = { ...now, [role]: shaft };
      const label = `${element}: ${role} ${shaft === '' ? 'not named' : shaft}`;
      if (kind.onOneShaft === undefined || kind.places.includes('on')) return adding(label, [place(role)], 'changed');
      // A file may say only `on`, which stands for all roles: then they are written out.
      const whole = [...kind.places].map((each) => place(each));
      return adding(label, [...whole, { path: [...path, 'on'], yaml: undefined }], 'changed');
    }),
};

const standing = (shaft: string | undefined) => (shaft === undefined || shaft === '' ? undefined : yamlScalar(shaft));

function at(session: PlantSession, name: string, make: (stated: PlantMachine) => Built): Built {
  const machine = session.machine(name)?.stated;
  return machine === undefined ? { refused: `The plant has no machine '${name}'.` } : make(machine);
}

function adding(what: string, edits: readonly Edit[], how: 'added' | 'changed' = 'added'): Built {
  const label = how === 'added' ? `${what} added` : what;
  return { label, edits, takesAlong: [], unsettles: [] };
}

function put(path: Edit['path'], yaml: string, before: string | undefined): Edit {
  return { path, yaml, ...(before === undefined ? {} : { before }) };
}
