import { type Answer, marginalWithout } from '@soundpost/core';
import type { StandardisedFacts } from '../text/standardised-text.ts';

/** The choice of part numbers for scripts; money in the currency named, margins in decibels. */
export function standardisedJson({ keeping, plan, prices, substitutes, costNow }: StandardisedFacts) {
  return {
    currency: keeping.currency,
    cost: plan.cost,
    atLeast: plan.bound,
    gap: plan.gap,
    proof: plan.proof,
    costAsDesigned: costNow ?? null,
    kept: plan.kept.map(({ type, place, inUse, spares, toBuy, cost, at }) => ({
      name: type.name,
      shelf: keeping.shelf[place],
      rule: type.rule,
      inUse,
      spares: keeping.sparesUnknown.has(place) ? null : spares,
      inStock: type.inStock,
      toBuy,
      cost,
      at,
    })),
    chosen: plan.chosen.map(({ point, way }) => ({ point, way: way.name })),
    unmet: plan.unmet,
    without: prices.map(({ kept, irreplaceableAt, more }) => ({
      name: kept.type.name,
      irreplaceableAt,
      costsMore: more ?? null,
      marginalAt: marginalWithout(substitutes, kept.place),
    })),
    substitutes: substitutes.map(({ point, chosen, substitutes: others }) => ({
      point,
      chosen: chosen.way.name,
      leastMargin: chosen.row.leastMargin,
      others: others.map(({ way, changes }) => ({
        way: way.way.name,
        leastMargin: way.row.leastMargin,
        changes: changes.map((each) => ({ ...each, from: plain(each.from), to: plain(each.to) })),
      })),
    })),
    unpriced: keeping.unpriced,
    missing: keeping.missing,
    leftAside: keeping.aside,
  };
}

function plain(value: Answer<number> | string) {
  if (typeof value === 'string') return value;
  return value.known ? value.value : null;
}
