/** `elementDiameter` as it stands in files, options and JSON: `element-diameter`. */
export function kebab(name: string): string {
  return name.replace(/([a-z0-9])([A-Z])/g, '$1-$2').toLowerCase();
}

/** `elementDiameter` as it stands in a sentence: `element diameter`. */
export function words(name: string): string {
  return kebab(name).replace(/-/g, ' ');
}

/** `element-diameter` as it stands in code: `elementDiameter`. */
export function camel(name: string): string {
  return name.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
}
