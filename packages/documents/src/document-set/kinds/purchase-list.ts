import { type CableQuantity, cableQuantities, type Design, type PartQuantity, partQuantities } from '@soundpost/core';
import { keyNumbers } from '../../chain/chain-parts.ts';
import { partsInUse } from '../../design/stated-values.ts';
import { note } from '../blocks.ts';
import { answered, count, none, numberIn, words } from '../cells.ts';
import { issuedKind } from '../issued-kind.ts';
import { blankColumn, numberColumn, setTable, textColumn } from '../set-table.ts';

/** What is to be ordered, by type: pieces in use, spares, and cable by the metre. */
export const purchaseList = issuedKind({
  kind: 'purchase-list',
  title: 'Purchase list with spares',
  readers: 'whoever asks for offers and orders: types, not makes',
  orientation: 'landscape',
  sheets: (design, showing) => {
    const length = showing.units === 'us' ? 'ft' : 'm';
    const kinds = kindsByName(design);
    return [
      {
        title: 'Parts and cable',
        blocks: [
          setTable<PartQuantity>(
            'parts',
            'Parts of all chosen chains',
            [
              textColumn('Part', ({ role }) => words(role), 1.2),
              textColumn('Type', ({ name }) => words(name), 1.2),
              textColumn('Kind', ({ name, role }) => words(kinds.get(`${role}/${name}`)?.kind.name), 2.4),
              textColumn(
                'What decides',
                ({ name, role }) => {
                  const part = kinds.get(`${role}/${name}`);
                  return part === undefined ? none : words(keyNumbers({ ...part, here: [] }, showing).join('; '));
                },
                4,
              ),
              numberColumn('In use', '', ({ pieces }) => count(pieces), 0.7),
              numberColumn('Spares', '', ({ spares }) => (spares === undefined ? none : count(spares)), 0.7),
              blankColumn('Ordered', 0.9),
            ],
            partQuantities(design),
            'No chain is chosen, so nothing is to be ordered.',
          ),
          setTable<CableQuantity>(
            'cable',
            'Cable of all chosen chains',
            [
              textColumn('Type', ({ name }) => words(name), 1.2),
              numberColumn('Lengths', '', ({ lengths }) => count(lengths), 0.8),
              numberColumn(
                'Together',
                length,
                ({ total }) => answered(total, (value) => numberIn(length, 'length', value, { ...showing, digits: 6 })),
                1,
              ),
              textColumn('At', ({ at }) => words(at.join(', ')), 6),
              blankColumn('Ordered', 0.9),
            ],
            cableQuantities(design),
            'No cable is known.',
          ),
          note(
            'Spares are a tenth of the pieces in use, to the next whole and at least one: common practice, no source; the owner may ask for others. Input channels are counted, not cards: how many channels a card has is not stated. Cable is without waste and ends.',
          ),
        ],
      },
    ];
  },
});

/** The parts by what they are called in the count of pieces. */
function kindsByName(design: Design) {
  return new Map(
    partsInUse(design).map(({ part }) => [`${part.role === 'input' ? 'input channel' : part.role}/${part.name}`, part]),
  );
}
