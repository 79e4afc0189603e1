type Where = 'localStorage' | 'sessionStorage';

/** What this browser, or this page, has kept under a name; null where there is nothing that can be read. */
export function kept<T>(where: Where, name: string): T | null {
  try {
    return JSON.parse(window[where].getItem(name) ?? 'null') as T | null;
  } catch {
    return null;
  }
}

/** Keeps it, or with null throws it away; false where the browser keeps nothing, or not as much. */
export function keep(where: Where, name: string, what: unknown): boolean {
  try {
    if (what === null) window[where].removeItem(name);
    else window[where].setItem(name, JSON.stringify(what));
    return true;
  } catch {
    return false;
  }
}
