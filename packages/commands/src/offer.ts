import { type Catalogue, design, offeredPart, Refusal, type Shelf, shelves } from '@soundpost/core';
import { catalogueReader, readYaml } from '@soundpost/files';
import { always, argument, command, namesFlag } from './command.ts';
import { offerJson } from './json/offer-json.ts';
import { unknownName } from './plant/point-called.ts';
import { readPlant } from './plant/read-plant.ts';
import { seed } from './seed.ts';
import { offerLines } from './text/offer-text.ts';

export const offer = command({
  name: 'offer',
  summary: 'What the plant becomes with an offered part in the place of the one asked for',
  description:
    'Puts each offered part, one after another, wherever the asked one stands, designs those machines again and says what ' +
    'became of every point: lost, worse, the same or better, with the requirement that decides; how the data sheets ' +
    'deviate line by line, what an offer does not state, which derived values and proofs change, and which commissioning ' +
    'tests are to be made again. An offer is a catalogue file. Ends with 1 where no offered part keeps every proof.',
  arguments: {
    plant: argument('PLANT', 'A plant file'),
    asked: argument('PART', 'The part asked for, as the plant names it'),
    offers: argument('OFFERS', 'A catalogue file with the offered parts'),
  },
  flags: { parts: namesFlag('A,B', 'Only these of the offered parts') },
  examples: ['soundpost offer examples/raw-water-pump/plant.yaml ACC-100 examples/offers/accelerometers.yaml'],
  whenAllowed: always,
  async perform(surroundings, { plant: path, asked, offers: offersPath, parts }, manner) {
    const { plant } = await readPlant(surroundings, path);
    surroundings.step(`reading ${offersPath}`);
    const offers = readYaml(await surroundings.readBytes(offersPath), offersPath, catalogueReader).value;
    const { shelf, part } = askedPart(plant.catalogue, asked);
    const offered = offeredParts(offers, shelf, parts);
    surroundings.step('designing the plant as asked for');
    const before = design(plant, seed);
    const all = offered.map((each) => {
      surroundings.step(`designing it with ${each.name}`);
      return offeredPart(before, shelf, part, each, seed);
    });
    const keeps = all.some((each) => each.points.length > 0 && each.difference.unproven.length === 0);
    return {
      exit: keeps ? 0 : 1,
      lines: offerLines(all, manner),
      json: { asked: part.name, shelf, offers: all.map(offerJson) },
    };
  },
});

function askedPart(catalogue: Catalogue, name: string): { shelf: Shelf; part: Catalogue[Shelf][number] } {
  for (const shelf of shelves) {
    const part = (catalogue[shelf] as readonly Catalogue[Shelf][number][]).find((each) => each.name === name);
    if (part !== undefined) return { shelf, part };
  }
  throw unknownName(
    name,
    `a part of ${catalogue.title}`,
    shelves.flatMap((shelf) => catalogue[shelf].map((each) => each.name)),
  );
}

function offeredParts(offers: Catalogue, shelf: Shelf, wanted: readonly string[] | undefined) {
  const there = offers[shelf] as readonly Catalogue[Shelf][number][];
  if (there.length === 0) {
    throw new Refusal({
      read: offers.title,
      expected: `a catalogue with ${shelf}`,
      suggestion: `The part asked for is one of the ${shelf} of the plant; an offer in its place stands on the same shelf.`,
    });
  }
  if (wanted === undefined) return there;
  return wanted.map((name) => {
    const found = there.find((each) => each.name === name);
    if (found !== undefined) return found;
    throw unknownName(
      name,
      `one of the ${shelf} of ${offers.title}`,
      there.map((each) => each.name),
    );
  });
}
