/** How far the process scatters, one standard deviation each. */
export const spreads = ['process.tolerance_mm', 'process.scale_spread_percent', 'process.common_spread_um', 'process.finish_spread_um', 'process.fit_spread_um'];

/** Fields that change no surface: what is meshed and measured of the solids stays true. */
export const unseen = [
  '$schema',
  'name',
  ...spreads,
  'process.sprue_mm',
  'process.sprue_length_mm',
  'process.stem_mm',
  'process.parts_per_tree',
  'process.plate_x_mm',
  'process.plate_y_mm',
  'process.plate_z_mm',
  'process.plate_gap_mm',
];
