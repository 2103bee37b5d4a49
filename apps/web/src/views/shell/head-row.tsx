/** The head of a table, a heading a column. */
export function HeadRow({ of }: { readonly of: readonly string[] }) {
  return (
    <thead>
      <tr>
        {of.map((heading) => (
          <th key={heading} scope="col">
            {heading}
          </th>
        ))}
      </tr>
    </thead>
  );
}
