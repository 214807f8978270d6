module galewright

go 1.26
