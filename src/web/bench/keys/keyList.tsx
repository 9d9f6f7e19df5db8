import { KEY_TABLE } from './keyTable.ts'

/** The keys, group by group. */
export const KeyList = () => (
  <div className="key-list">
    {KEY_TABLE.map(({ where, rows }) => (
      <section key={where}>
        <h3>{where}</h3>
        <dl>
          {rows.map(({ keys, does }) => (
            <div key={does}>
              <dt>
                {keys.map((key) => (
                  <kbd key={key}>{key}</kbd>
                ))}
              </dt>
              <dd>{does}</dd>
            </div>
          ))}
        </dl>
      </section>
    ))}
  </div>
)
