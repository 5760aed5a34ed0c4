/** The pieces of a request's body as they come. The browser's stream is read by hand, since its type does not say that it can be walked over. */
export async function* pieces(body: ReadableStream<Uint8Array>): AsyncIterable<Uint8Array> {
  const reader = body.getReader();
  try {
    for (let next = await reader.read(); !next.done; next = await reader.read()) yield next.value;
  } finally {
    await reader.cancel();
  }
}
