/** The address of a point's view. */
export function pointAddress(of: string): string {
  const cut = of.indexOf('/');
  return `/point/${encodeURIComponent(of.slice(0, cut))}/${encodeURIComponent(of.slice(cut + 1))}`;
}

export function rehearsalAddress(of: string): string {
  return `${pointAddress(of)}/rehearsal`;
}

export function acceptanceAddress(of: string): string {
  return `${pointAddress(of)}/acceptance`;
}

export function machineAddress(name: string): string {
  return `/machine/${encodeURIComponent(name)}`;
}

export function partAddress(name: string): string {
  return `/catalogue/${encodeURIComponent(name)}`;
}
