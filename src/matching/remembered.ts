/** The same function, worked out once for each object that it is asked of: responses and elements are asked for at every passage of every station. */
export function remembered<Of extends object, Value>(workOut: (of: Of) => Value): (of: Of) => Value {
  const known = new WeakMap<Of, { value: Value }>();
  return (of) => {
    let found = known.get(of);
    if (found === undefined) known.set(of, (found = { value: workOut(of) }));
    return found.value;
  };
}
