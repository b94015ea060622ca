/** One measured speed beside its goal; smaller is better. */
export type Figure = { readonly name: string; readonly unit: string; readonly value: number; readonly goal: number };
