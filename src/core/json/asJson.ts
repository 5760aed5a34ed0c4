/** A value as JSON has it, read-only throughout: a key that is undefined is a key that is left out. */
export type AsJson<Value> = Value extends object
  ? { readonly [Key in keyof Value]: IsOptional<Value, Key> extends true ? AsJson<Value[Key]> | undefined : AsJson<Value[Key]> }
  : Value;

type IsOptional<Value, Key extends keyof Value> = Partial<Pick<Value, Key>> extends Pick<Value, Key> ? true : false;
