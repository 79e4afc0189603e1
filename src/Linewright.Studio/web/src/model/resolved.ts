import type { Numbers } from './api';
import type { Value } from './brief.svelte';

/** What holds for a field where the brief leaves it open: its default, or what the parts derived for it. */
export function resolved(numbers: Numbers | null, path: string): Value | null {
  const [group, name] = path.split('.');
  const written = numbers?.report.brief[group];
  if (name === undefined) return (written as Value | undefined) ?? null;
  return (written as Record<string, Value> | undefined)?.[name] ?? numbers?.derived[path] ?? null;
}
