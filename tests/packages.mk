# Further packages that the tests need, one line each with the reason.
