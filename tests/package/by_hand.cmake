# Compiles a client by one command, as a user without a build system does, and runs it: COMMAND, in the folder WORK.
file(REMOVE_RECURSE "${WORK}")
file(MAKE_DIRECTORY "${WORK}")
execute_process(COMMAND sh -ec "${COMMAND}" WORKING_DIRECTORY "${WORK}" COMMAND_ECHO STDERR COMMAND_ERROR_IS_FATAL ANY)
