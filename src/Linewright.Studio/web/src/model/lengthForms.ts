/** The ways to say how long a piece is; a brief has one of them. */
export const lengthForms = ['length.laid_flat_mm', 'length.laid_flat_in', 'length.wrist_mm'];
