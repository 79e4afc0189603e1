export type LengthUnit = 'mm' | 'in';

const mmPerInch = 25.4;

/** A length as the designer reads it: hundredths of a millimetre, or thousandths of an inch. */
export function length(mm: number, unit: LengthUnit, digits = 2): string {
  return unit === 'mm' ? `${mm.toFixed(digits)} mm` : `${(mm / mmPerInch).toFixed(digits + 1)} in`;
}

export const fromMm = (mm: number, unit: LengthUnit) => (unit === 'mm' ? mm : mm / mmPerInch);
export const toMm = (shown: number, unit: LengthUnit) => (unit === 'mm' ? shown : shown * mmPerInch);

/** Any measured value with its unit; lengths follow the designer's choice. */
export function measure(value: number | null, unit: string, lengths: LengthUnit): string {
  if (value === null) return '';
  if (unit === 'mm') return length(value, lengths, Math.abs(value) < 10 ? 3 : 2);
  const sign = unit === 'deg' ? '°' : unit === 'um' ? ' µm' : unit === '%' ? ' %' : unit ? ` ${unit}` : '';
  return `${plain(value, 2)}${sign}`;
}

/** A number without idle noughts. */
export function plain(value: number, digits = 3): string {
  return String(Number(value.toFixed(digits)));
}
