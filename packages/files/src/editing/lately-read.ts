import { type YamlSource, yamlSource } from './yaml-source.ts';

/** Reading a plant of hundreds of points takes most of the time of an edit, and the same few texts come again. */
const mostKept = 4;
const kept = new Map<string, YamlSource>();

/** `yamlSource`, with the texts read last still at hand. Nobody changes what it gives. */
export function latelyRead(text: string): YamlSource {
  return remembered(kept.get(text) ?? yamlSource(text));
}

/** Keeps a text that has been read, since it will probably be asked for next. */
export function remembered(source: YamlSource): YamlSource {
  kept.delete(source.text);
  kept.set(source.text, source);
  if (kept.size > mostKept) kept.delete(kept.keys().next().value!);
  return source;
}
