using Linewright.Cli;

return CommandLine.Run(args, Desk.OfTheConsole());
