import { memoryChatLog } from "../../../bot/chat/memory-chat-log.ts";
import { chatLogContract } from "./chat-log-contract.ts";

chatLogContract("memory", memoryChatLog);
