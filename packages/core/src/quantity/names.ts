/** `elementDiameter` as it stands in files, options and JSON: `element-diameter`. */
export function kebab(name: string): string {
  return name.replace(/([a-z0-9])([A-Z])/g, '$1-$2').toLowerCase();
}

/** `elementDiameter` as it stands in a sentence: `element diameter`. */
export function words(name: string): string {
  return kebab(name)
    .replace(/-/g, ' ')
    .replace(
      certificateLetters,
      (_, letter: string, end: string, over: string | undefined, group: string | undefined) =>
        `certificate ${letter.toUpperCase()}${end}${over === undefined ? '' : `/R${end}`}${group === undefined ? '' : ` (${group.toUpperCase()})`}`,
    );
}

/** A value of a certificate keeps its letters: `certificateLoOverRoIic` is `certificate Lo/Ro (IIC)`. */
const certificateLetters = /^certificate ([uipcl])([io])(?: over (ro))?(?: (ii[abc]))?$/;

/** `element-diameter` as it stands in code: `elementDiameter`. */
export function camel(name: string): string {
  return name.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
}
