-- rows.sql - the same job for sqlite3, over the table r of texts.
.headers on
.mode list
.separator , "\n"
with pks as (select *, 0.09018 + 2729.92 / (temp + 273.15)
  + (0.1552 - 0.0003142 * temp) * (19.924 * salinity / (1000 - 1.005 * salinity)) as pk from r),
shares as (select *, 1 / (1 + exp(2.302585092994046 * (pk - ph))) as f from pks)
select "when", tank, tan, ph, temp, salinity, printf('%.6g', 100 * f) as free_percent,
  printf('%.6g', f * tan) as free_mg_L from shares;
