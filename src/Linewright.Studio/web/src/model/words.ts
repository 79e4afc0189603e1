// group.name, as briefs and the program's messages spell a field.
const field = /\b[a-z]+\.[a-z_]+[a-z]\b/g;

/** The fields that a message names, each once. */
export const pathsIn = (text: string) => [...new Set(text.match(field) ?? [])];

/** A message with fields called as their controls are. */
export const spoken = (text: string, label: (path: string) => string) => text.replace(field, path => label(path).toLowerCase());

/** As it stands at the beginning of a sentence. */
export const capital = (text: string) => text.replace(/^./, letter => letter.toUpperCase());
