/** Countries whose rates of value added tax stand in the tables; any other is `other`, which has none. */
export const COUNTRIES = ['CA', 'DE', 'DK', 'EE', 'FI', 'GB', 'IE', 'LT', 'LV', 'SE'] as const;
