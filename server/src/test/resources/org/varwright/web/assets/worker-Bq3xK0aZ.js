// a worker
