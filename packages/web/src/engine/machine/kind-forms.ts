import { type AnyElementKind, machineElementKinds } from '@soundpost/core';
import type { KindForm, RoleForm } from './building-views.ts';

/** Every kind of element with the roles its shafts play, for the form that adds one. */
export function kindForms(): readonly KindForm[] {
  return machineElementKinds.map((each: AnyElementKind) => ({
    kind: each.kind,
    name: each.name,
    roles: rolesOf(each),
  }));
}

export function rolesOf(kind: AnyElementKind): readonly RoleForm[] {
  const places: readonly string[] = kind.places;
  const carried: readonly string[] = kind.carriedPlaces ?? [];
  return [
    ...places.map((role) => ({
      role,
      meaning: role === 'on' ? 'The shaft it stands on' : `The shaft on its ${role} side`,
      mayBeFixed: kind.mayBeFixed?.includes(role) === true,
      mayBeLeftOut: false,
    })),
    ...carried.map((role) => ({
      role,
      meaning: `The ${role} as a shaft of its own, where something stands on it`,
      mayBeFixed: false,
      mayBeLeftOut: true,
    })),
  ];
}
