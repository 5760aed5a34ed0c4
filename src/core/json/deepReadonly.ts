/** A value whose members and items, down to the last, are read-only: what a codec reads and writes is never changed in place. */
export type DeepReadonly<Value> = Value extends object ? { readonly [Key in keyof Value]: DeepReadonly<Value[Key]> } : Value;
