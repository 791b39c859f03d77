// rows_duckdb.js - the same job for DuckDB, one thread: node rows_duckdb.js FILE
const { DuckDBInstance } = require('@duckdb/node-api');

const job = (file) => `copy (
  select "when", tank, tan, ph, temp, salinity, printf('%.6g', 100 * f) as free_percent,
    printf('%.6g', f * tan) as free_mg_L
  from (select *, 1 / (1 + exp(2.302585092994046 * (pk - ph))) as f
    from (select *, 0.09018 + 2729.92 / (temp + 273.15)
        + (0.1552 - 0.0003142 * temp) * (19.924 * salinity / (1000 - 1.005 * salinity)) as pk
      from read_csv('${file}', header = true, delim = ',', columns = {'when': 'varchar',
        'tank': 'varchar', 'tan': 'double', 'ph': 'double', 'temp': 'double', 'salinity': 'double'})))
  ) to '/dev/stdout' (format csv, header true)`;

async function main() {
  const database = await DuckDBInstance.create(':memory:', { threads: '1' });
  const connection = await database.connect();
  await connection.run(job(process.argv[2]));
}

main().catch((error) => {
  console.error(error.message);
  process.exit(1);
});
