/** An amount to two places, thousands set apart. */
export const amount = (value: number) => value.toLocaleString('en', { minimumFractionDigits: 2, maximumFractionDigits: 2 });
