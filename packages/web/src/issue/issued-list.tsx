import type { IssuedBefore } from './issued.ts';

/** The revisions that stand in the folder beside the plant, each with its files, pages and hashes. */
export function IssuedList({ before: { issued, words } }: { readonly before: IssuedBefore }) {
  return (
    <section aria-label="Issued before">
      <h2>Issued before</h2>
      {issued === undefined ? (
        <p className="quiet">{words ?? 'Looking…'}</p>
      ) : issued.revisions.length === 0 ? (
        <p className="quiet">Nothing stands in {issued.path} yet.</p>
      ) : (
        issued.revisions.map(({ name, revision, date, preliminary, contentHash, files }) => (
          <details key={name}>
            <summary>
              Revision {revision}, {date}
              {preliminary ? ', preliminary' : ''}, {files.length} files
            </summary>
            <p className="quiet hash">content {contentHash}</p>
            {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by the keyboard */}
            <section className="pushed" aria-label={`Files of revision ${revision}`} tabIndex={0}>
              <table>
                <thead>
                  <tr>
                    <th scope="col">Document</th>
                    <th scope="col">File</th>
                    <th scope="col">Pages</th>
                    <th scope="col">SHA-256</th>
                  </tr>
                </thead>
                <tbody>
                  {files.map(({ path, title, pages, sha256 }) => (
                    <tr key={path}>
                      <td>{title}</td>
                      <td>
                        <a href={addressOf(issued.folder, name, path)} target="_blank" rel="noreferrer">
                          {path}
                        </a>{' '}
                        <a href={addressOf(issued.folder, name, path)} download aria-label={`Download ${path}`}>
                          ↓
                        </a>
                      </td>
                      <td>{pages ?? ''}</td>
                      <td className="hash" title={sha256}>
                        {sha256.slice(0, 12)}…
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </section>
          </details>
        ))
      )}
    </section>
  );
}

function addressOf(folder: string, name: string, path: string): string {
  const file = path.split('/').map(encodeURIComponent).join('/');
  return `/api/issues/${encodeURIComponent(folder)}/${name}/file/${file}`;
}
