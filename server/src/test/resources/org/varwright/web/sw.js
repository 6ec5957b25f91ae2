// A worker for tests.
