/** Keys that work wherever no text is being written. */
export interface Deeds {
  undo(): void;
  redo(): void;
  save(): void;
  open(): void;
  view(key: string): void;
}

export function handleKey(event: KeyboardEvent, deeds: Deeds): void {
  const target = event.target as HTMLElement;
  const isText = target instanceof HTMLInputElement && (target.type === 'text' || target.type === 'number');

  // What lies before the bench has the keys; the browser's own page to save or open is not wanted there either.
  if (target.closest('dialog') !== null) {
    if ((event.ctrlKey || event.metaKey) && /^[so]$/i.test(event.key)) event.preventDefault();
    return;
  }
  const key = event.key.toLowerCase();
  if (event.ctrlKey || event.metaKey) {
    // In a text that is being written, undo is the text's own.
    const deed =
      key === 's' ? deeds.save : key === 'o' ? deeds.open : isText ? null : key === 'z' ? (event.shiftKey ? deeds.redo : deeds.undo) : key === 'y' ? deeds.redo : null;
    if (deed) {
      event.preventDefault();
      deed();
    }
    return;
  }
  const isEntry = isText || target instanceof HTMLSelectElement;
  if (!isEntry && !event.altKey && /^[fmsd1-5]$/.test(key)) deeds.view(key);
}
