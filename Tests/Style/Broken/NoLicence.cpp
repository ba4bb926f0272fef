// no licence here
